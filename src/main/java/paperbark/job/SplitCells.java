package paperbark.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.firm.FirmTables;
import paperbark.firm.Product;
import paperbark.sheet.Cell;
import paperbark.sheet.CellBuilder;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.value.Parsed;

/**
 * A sheet whose cells of several facts are taken apart: each fact has a column of its own, which
 * goes by heading and letters of the column that it came from. A column that holds the fact alone
 * comes first where it is filled in. How a cell was read goes with its parts as a trouble, so that
 * it becomes a finding of the job.
 *
 * @param sheet the rows with the parts added
 * @param columns the columns by field, those of the parts among them
 */
public record SplitCells(Sheet sheet, Map<Field, Column> columns) {

    /** Takes apart what the table of columns says is to be taken apart. */
    public static SplitCells of(Sheet sheet, Map<Field, Column> columns, FirmTables tables) {
        List<Field> together =
                columns.keySet().stream().filter(f -> !f.parts().isEmpty()).sorted().toList();
        if (together.isEmpty()) {
            return new SplitCells(sheet, columns);
        }
        Map<Field, Column> all = new HashMap<>(columns);
        for (Field field : together) {
            Column column = columns.get(field);
            for (Field part : field.parts()) {
                int next = columns.size() - all.size();
                all.putIfAbsent(part, new Column(next, column.letters(), column.heading()));
            }
        }
        Splitter splitter = new Splitter(all, tables);
        List<Row> rows = sheet.rows().stream().map(row -> splitter.row(row, together)).toList();
        return new SplitCells(sheet.with(rows), Map.copyOf(all));
    }

    private record Splitter(Map<Field, Column> columns, FirmTables tables) {

        Row row(Row row, List<Field> together) {
            Row split = row;
            for (Field field : together) {
                Cell whole = row.cell(columns.get(field));
                if (!whole.isBlank()) {
                    split = split(split, field, whole);
                }
            }
            return split;
        }

        private Row split(Row row, Field together, Cell whole) {
            Map<Integer, Cell> cells = new HashMap<>(row.cells());
            if (whole.kind() == Cell.Kind.UNUSABLE) {
                refuse(row, together, whole, whole.troubles(), cells);
                return new Row(row.number(), cells);
            }
            Parsed<CellParts> read = read(together, whole.text(), row);
            if (read instanceof Parsed.Bad<CellParts> bad) {
                CellTrouble trouble =
                        trouble(FindingCode.CELL_NOT_SPLIT, bad.fact(), bad.remedy(), whole);
                refuse(row, together, whole, List.of(trouble), cells);
            } else {
                take(row, read.toOptional().orElseThrow(), whole, cells);
            }
            return new Row(row.number(), cells);
        }

        /** Each part that has no column of its own shares the fate of the whole. */
        private void refuse(
                Row row,
                Field together,
                Cell whole,
                List<CellTrouble> troubles,
                Map<Integer, Cell> cells) {
            for (Field part : together.parts()) {
                Column own = columns.get(part);
                if (row.cell(own).isBlank()) {
                    cells.put(
                            own.index(),
                            cell(own, whole, Cell.Kind.UNUSABLE, whole.text(), troubles));
                }
            }
        }

        private void take(Row row, CellParts parts, Cell whole, Map<Integer, Cell> cells) {
            List<CellTrouble> troubles = told(whole, parts);
            parts.texts()
                    .forEach(
                            (part, text) -> {
                                Column own = columns.get(part);
                                Cell said = row.cell(own);
                                if (said.isBlank()) {
                                    cells.put(
                                            own.index(),
                                            cell(own, whole, Cell.Kind.TEXT, text, troubles));
                                } else if (!ColumnNames.normal(said.text())
                                        .equals(ColumnNames.normal(text))) {
                                    cells.put(own.index(), contradicted(said, text, whole));
                                }
                            });
        }

        private static Cell contradicted(Cell said, String text, Cell whole) {
            List<CellTrouble> troubles = new ArrayList<>(said.troubles());
            troubles.add(
                    new CellTrouble(
                            FindingCode.CELL_SPLIT_DOUBTFUL,
                            "Cell "
                                    + whole.address()
                                    + " says \""
                                    + text
                                    + "\" of it; what stands here counts.",
                            "Compare both cells and correct the one that is wrong."));
            return CellBuilder.builder(said).troubles(troubles).build();
        }

        private Parsed<CellParts> read(Field together, String text, Row row) {
            if (together == Field.OWNER_ONE_CELL) {
                return OwnerCell.parse(text);
            }
            if (together == Field.PRODUCT_ONE_CELL) {
                return ProductCell.parse(text, tables);
            }
            return together == Field.SERIALS_ONE_CELL
                    ? SerialsCell.parse(text, product(row))
                    : AddressCell.parse(text, together.parts());
        }

        private Optional<Product> product(Row row) {
            return tables.product(text(row, Field.MAKER), text(row, Field.MODEL));
        }

        private String text(Row row, Field field) {
            Column column = columns.get(field);
            return column == null ? "" : row.cell(column).text();
        }

        private static List<CellTrouble> told(Cell whole, CellParts found) {
            List<CellTrouble> troubles = new ArrayList<>();
            whole.troubles()
                    .forEach(t -> troubles.add(trouble(t.code(), t.fact(), t.remedy(), whole)));
            boolean asItStands =
                    found.texts().size() == 1 && found.texts().containsValue(whole.text());
            if (found.doubt().isPresent()) {
                troubles.add(
                        trouble(
                                FindingCode.CELL_SPLIT_DOUBTFUL,
                                "The cell was read as "
                                        + found.inWords()
                                        + ", but "
                                        + found.doubt().get()
                                        + ".",
                                "Compare it with what is meant, and write it so that no doubt is left.",
                                whole));
            } else if (!asItStands) {
                troubles.add(
                        trouble(
                                FindingCode.CELL_SPLIT,
                                "The cell was read as " + found.inWords() + ".",
                                "",
                                whole));
            }
            return troubles;
        }

        private static CellTrouble trouble(
                FindingCode code, String fact, String remedy, Cell whole) {
            return new CellTrouble(code, fact, remedy, Optional.of(whole.text()));
        }

        private static Cell cell(
                Column column,
                Cell whole,
                Cell.Kind kind,
                String text,
                List<CellTrouble> troubles) {
            return new Cell(
                    column.index(),
                    whole.address(),
                    kind,
                    text,
                    Optional.empty(),
                    Optional.empty(),
                    troubles);
        }
    }
}
