package paperbark.output.workbook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import paperbark.firm.ColumnGuide;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;
import paperbark.output.table.FormulaText;
import paperbark.sheet.TableFiles;

/** One table of the firm as a sheet to type into. */
final class TableSheet {
    private static final int FIRST_ROW = 1;
    private static final int NARROWEST = 10;
    private static final int NAME_WIDTH = 24;
    private static final int WIDEST = 42;
    private static final int OWN_COLUMNS = 20;

    // Beyond this a spreadsheet rounds.
    private static final int MOST_DIGITS = 15;

    private final XSSFSheet sheet;
    private final FormLook look;
    private final CellRules rules;
    private final List<String> tables;
    private final boolean examples;

    /**
     * A sheet to be written.
     *
     * @param tables the names of all sheets with a table
     * @param examples whether the sheets begin with an example row
     */
    TableSheet(
            XSSFSheet sheet,
            FormLook look,
            ListsSheet lists,
            List<String> tables,
            boolean examples) {
        this.examples = examples;
        this.sheet = sheet;
        this.look = look;
        this.rules = new CellRules(sheet, lists);
        this.tables = tables;
    }

    void write(TableRows table, Map<String, List<String>> words) {
        TableGuide guide = TableGuide.of(table.name());
        List<ColumnGuide> columns = table.headings().stream().map(guide::column).toList();
        columns(table, columns);
        headings(table.headings(), columns);
        boolean shows = examples && guide.facts().isEmpty() && !table.name().equals("state-papers");
        int first = shows ? FIRST_ROW + 1 : FIRST_ROW;
        if (shows) {
            example(columns);
        }
        for (int i = 0; i < table.rows().size(); i++) {
            row(table.rows().get(i), columns, sheet.createRow(first + i));
        }
        if (guide.facts().isEmpty()) {
            for (int i = 0; i < columns.size(); i++) {
                rule(new CellRules.Area(first, CellRules.LAST_ROW, i), columns.get(i), words);
            }
        } else {
            facts(table, guide, words);
        }
        sheet.createFreezePane(1, FIRST_ROW);
        FormLook.lock(sheet);
        SheetSetup.form(sheet, table.name(), columns.size());
    }

    private void columns(TableRows table, List<ColumnGuide> columns) {
        for (int i = 0; i < columns.size(); i++) {
            sheet.setDefaultColumnStyle(i, look.open(columns.get(i).holds()));
            int at = i;
            int longest = table.rows().stream().mapToInt(r -> r.get(at).length()).max().orElse(0);
            int shown = Math.max(longest, columns.get(i).example().length());
            int wanted = Math.max(table.headings().get(i).length(), shown) + 2;
            int narrowest = i == 0 ? NAME_WIDTH : NARROWEST;
            sheet.setColumnWidth(i, Math.max(narrowest, Math.min(WIDEST, wanted)) * 256);
        }
        for (int i = columns.size(); i < columns.size() + OWN_COLUMNS; i++) {
            sheet.setDefaultColumnStyle(i, look.open(Holds.TEXT));
        }
    }

    private void headings(List<String> headings, List<ColumnGuide> columns) {
        XSSFRow row = sheet.createRow(0);
        for (int i = 0; i < headings.size(); i++) {
            XSSFCell cell = row.createCell(i);
            cell.setCellValue(Texts.stored(headings.get(i)));
            cell.setCellStyle(look.heading());
            if (!columns.get(i).note().isEmpty()) {
                FormLook.note(sheet, cell, columns.get(i).note());
            }
        }
        // Columns of the firm's own may follow.
        for (int i = headings.size(); i < headings.size() + OWN_COLUMNS; i++) {
            row.createCell(i).setCellStyle(look.open(Holds.TEXT));
        }
    }

    private void example(List<ColumnGuide> columns) {
        XSSFRow row = sheet.createRow(FIRST_ROW);
        for (int i = 0; i < columns.size(); i++) {
            String text = columns.get(i).example();
            boolean first = i == 0 && !text.startsWith(TableFiles.EXAMPLE);
            XSSFCell cell = row.createCell(i);
            cell.setCellValue(first ? (TableFiles.EXAMPLE + " " + text).strip() : text);
            cell.setCellStyle(look.example());
        }
    }

    private void row(List<String> texts, List<ColumnGuide> columns, XSSFRow row) {
        for (int i = 0; i < texts.size(); i++) {
            if (!texts.get(i).isEmpty()) {
                put(row.createCell(i), texts.get(i), columns.get(i).holds());
            }
        }
    }

    private void put(XSSFCell cell, String text, Holds holds) {
        Optional<LocalDate> day = holds == Holds.DAY ? day(text) : Optional.empty();
        boolean counts = holds == Holds.NUMBER || holds == Holds.MONEY;
        cell.setCellStyle(FormulaText.is(text) ? look.quoted(holds) : look.open(holds));
        if (day.isPresent()) {
            cell.setCellValue(day.get());
        } else if (counts && isNumber(text)) {
            cell.setCellValue(new BigDecimal(text).doubleValue());
        } else {
            cell.setCellValue(Texts.stored(text));
        }
    }

    private static Optional<LocalDate> day(String text) {
        try {
            LocalDate day = LocalDate.parse(text);
            return day.getYear() > 1900 && day.getYear() < 2200
                    ? Optional.of(day)
                    : Optional.empty();
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    private static boolean isNumber(String text) {
        return text.matches("(0|[1-9][0-9]*)(\\.[0-9]+)?") && text.length() <= MOST_DIGITS;
    }

    private void rule(CellRules.Area area, ColumnGuide column, Map<String, List<String>> words) {
        switch (column.holds()) {
            case CHOICE ->
                    rules.choice(area, words(column, words), column.heading(), column.note());
            case NAME -> name(area, column);
            default -> rules.kind(area, column.holds(), column.heading(), column.note());
        }
    }

    private static List<String> words(ColumnGuide column, Map<String, List<String>> words) {
        String first = column.choices().get(0);
        return first.startsWith("@")
                ? words.getOrDefault(first.substring(1), List.of())
                : column.choices();
    }

    /** The names that stand in the other sheet at the time, without the example row. */
    private void name(CellRules.Area area, ColumnGuide column) {
        if (!tables.contains(column.namesOf())) {
            rules.kind(area, Holds.TEXT, column.heading(), column.note());
            return;
        }
        String from = "'" + column.namesOf() + "'!$A$" + (examples ? 3 : 2);
        String all = from + ":$A$" + (CellRules.LAST_ROW + 1);
        rules.oneOf(
                area,
                "OFFSET(" + from + ",0,0,MAX(1,COUNTA(" + all + ")),1)",
                column.heading(),
                column.note());
    }

    private void facts(TableRows table, TableGuide guide, Map<String, List<String>> words) {
        int value = table.column("value");
        int fact = table.column("fact");
        for (int i = 0; i < table.rows().size() && fact >= 0 && value >= 0; i++) {
            String name = table.rows().get(i).get(fact);
            int row = FIRST_ROW + i;
            sheet.getRow(row).getCell(fact).setCellStyle(look.fixed());
            guide.facts().stream()
                    .filter(f -> f.heading().equalsIgnoreCase(name))
                    .findFirst()
                    .ifPresent(
                            f -> {
                                FormLook.note(sheet, sheet.getRow(row).getCell(fact), f.note());
                                rule(new CellRules.Area(row, row, value), f, words);
                            });
        }
        sheet.setColumnWidth(Math.max(0, value), WIDEST * 256);
    }
}
