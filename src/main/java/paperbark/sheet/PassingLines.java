package paperbark.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import paperbark.finding.Finding;
import paperbark.finding.Place;

/** The lines of a sheet that passes by; each time anew. */
final class PassingLines implements SheetLines {
    private final XSSFSheet sheet;
    private final PassingBook book;
    private final CellReader reader;
    private final MergedCells merged;
    // Empty until they have passed; blocks lie below and to the right of their first cells.
    private final Map<CellAddress, Optional<Cell>> firsts = new HashMap<>();
    // Known once all rows have passed.
    private Optional<Set<Integer>> twice = Optional.empty();

    PassingLines(Sheet sheet, PassingBook book, CellReader reader, Place place) throws Refused {
        this.sheet = (XSSFSheet) sheet;
        this.book = book;
        this.reader = reader;
        List<CellRangeAddress> blocks = sheet.getMergedRegions();
        for (CellRangeAddress block : blocks) {
            firsts.put(
                    new CellAddress(block.getFirstRow(), block.getFirstColumn()), Optional.empty());
        }
        this.merged =
                new MergedCells(
                        blocks,
                        lastOf(blocks),
                        (row, column) ->
                                firsts.getOrDefault(new CellAddress(row, column), Optional.empty()),
                        place);
    }

    private interface Visitor {
        /** Takes a row; tells whether there is any need of the next. */
        boolean take(XMLStreamReader xml, int number) throws XMLStreamException;
    }

    @Override
    public List<Line> first(int most) {
        Map<Integer, Line> lines = new TreeMap<>();
        Set<Integer> seen = new HashSet<>();
        Set<Integer> again = new TreeSet<>();
        pass(
                (xml, number) -> {
                    Line line = line(xml, number);
                    if (!seen.add(number)) {
                        again.add(number);
                    }
                    lines.remove(number);
                    if (!line.row().isBlank()) {
                        lines.put(number, line);
                    }
                    return lines.size() < most;
                });
        if (lines.size() < most) {
            twice = Optional.of(again);
        }
        return new ArrayList<>(lines.values());
    }

    @Override
    public List<Finding> lost(String file) {
        if (twice.isEmpty()) {
            first(Integer.MAX_VALUE);
        }
        return lost(twice.orElseThrow(), file, sheet.getSheetName());
    }

    /** Gone through only where a block reaches far down, as whole columns do. */
    private int lastOf(List<CellRangeAddress> blocks) {
        return blocks.stream().anyMatch(block -> block.getLastRow() > Limits.FILLED_ROWS)
                ? lastRow()
                : Limits.FILLED_ROWS;
    }

    private int lastRow() {
        AtomicInteger last = new AtomicInteger();
        pass(
                (xml, number) -> {
                    last.accumulateAndGet(number - 1, Math::max);
                    return true;
                });
        return last.get();
    }

    private void pass(Visitor visitor) {
        try (InputStream in = book.xml(sheet)) {
            XMLStreamReader xml = PassingXml.reader(in);
            int number = 0;
            boolean on = true;
            while (on && xml.hasNext()) {
                xml.next();
                if (PassingXml.begins(xml, "row")) {
                    String written = xml.getAttributeValue(null, "r");
                    number = written == null ? number + 1 : Integer.parseInt(written);
                    on = visitor.take(xml, number);
                }
                on &= !PassingXml.ends(xml, "sheetData");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (XMLStreamException e) {
            throw new UncheckedIOException(new IOException(e));
        }
    }

    private Line line(XMLStreamReader xml, int number) throws XMLStreamException {
        String hidden = xml.getAttributeValue(null, "hidden");
        Map<Integer, Cell> cells = new TreeMap<>();
        Set<Integer> seen = new HashSet<>();
        int sums = 0;
        int column = 0;
        while (!PassingXml.ends(xml, "row")) {
            xml.next();
            PassingXml.refuseWithin(xml, "row");
            if (PassingXml.begins(xml, "c")) {
                PassingCell stored = PassingCell.of(xml, number, column + 1);
                column = stored.column();
                Cell cell = stored.read(reader, book, sheet, number);
                if (!seen.add(column)) {
                    cell = CellReader.doubled(cell);
                }
                firsts.replace(new CellAddress(number - 1, column - 1), Optional.of(cell));
                cells.put(column, cell);
                sums += !cell.isBlank() && stored.isSum(sheet, number) ? 1 : 0;
            }
        }
        cells.values().removeIf(Cell::isBlank);
        boolean onlySums = !cells.isEmpty() && sums == cells.size();
        if (!cells.isEmpty()) {
            merged.mark(number - 1, cells);
        }
        boolean unseen = hidden != null && (hidden.equals("1") || hidden.equals("true"));
        return new Line(new Row(number, cells), 0, unseen, onlySums);
    }
}
