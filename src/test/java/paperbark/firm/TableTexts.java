package paperbark.firm;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;

/** Tables written in the test: the smallest set that holds together, with some replaced. */
final class TableTexts implements TableSource {
    private final Map<String, String> texts = new LinkedHashMap<>();

    /** One firm, nothing else. */
    static TableTexts smallest() {
        TableTexts texts = new TableTexts();
        texts.put("firm", "fact,value\nname,Saltmarsh Hot Water Pty Ltd\nabn,99 000 000 000\n");
        texts.put("people", "person,phone,trade,licence,state,from,to\n");
        texts.put("makers", "maker\nTernlight\nDunlin\n");
        texts.put("products", String.join(",", ProductsTable.SHAPE.needed()) + "\n");
        texts.put("sellers", "seller,phone\n");
        texts.put("buyers", "buyer\nKestrel Certificates\n");
        texts.put("offers", String.join(",", OffersTable.SHAPE.needed()) + "\n");
        texts.put("state-papers", String.join(",", StatePapersTable.SHAPE.needed()) + "\n");
        return texts;
    }

    /** The same with one table replaced. */
    TableTexts with(String table, String text) {
        put(table, text);
        return this;
    }

    /** The same without that table. */
    TableTexts without(String table) {
        texts.remove(table);
        return this;
    }

    Reading<FirmTables> read() {
        return FirmTablesReader.read(this);
    }

    private void put(String table, String text) {
        texts.put(table, text);
    }

    @Override
    public Reading<Sheet> sheet(TableShape shape) {
        String text = texts.get(shape.name());
        String file = shape.name() + ".csv";
        if (text == null) {
            return Reading.refused(
                    List.of(
                            Finding.of(
                                    FindingCode.TABLE_MISSING,
                                    new Place.InFile(file),
                                    "It is not there.",
                                    "Put it there.")));
        }
        return Reading.of(sheet(file, text), List.of());
    }

    static Sheet sheet(String file, String csv) {
        try (var records = CSVFormat.RFC4180.parse(new StringReader(csv))) {
            List<CSVRecord> all = records.getRecords();
            List<Column> columns = new ArrayList<>();
            for (int i = 0; i < all.get(0).size(); i++) {
                String letter = String.valueOf((char) ('A' + i));
                columns.add(new Column(i + 1, letter, all.get(0).get(i)));
            }
            List<Row> rows = new ArrayList<>();
            for (int r = 1; r < all.size(); r++) {
                rows.add(row(r + 1, columns, all.get(r)));
            }
            return new Sheet(file, "", 1, columns, rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Row row(int number, List<Column> columns, CSVRecord texts) {
        Map<Integer, Cell> cells = new HashMap<>();
        for (Column column : columns) {
            Optional.of(column.index() - 1)
                    .filter(i -> i < texts.size())
                    .map(texts::get)
                    .ifPresent(
                            text ->
                                    cells.put(
                                            column.index(),
                                            Cell.text(
                                                    column.index(),
                                                    column.letters() + number,
                                                    text.strip())));
        }
        return new Row(number, cells);
    }
}
