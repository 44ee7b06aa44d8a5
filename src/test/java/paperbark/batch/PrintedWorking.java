package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** The working of a pack as it stands on the printed page: nothing is taken from the program. */
final class PrintedWorking extends PDFTextStripper {
    private static final Pattern SCHEME = Pattern.compile("\\d+ (STC|VEEC): .*");
    private static final Pattern NUMBERED = Pattern.compile("(\\d+)\\. (.*)");

    /**
     * What the page prints of one scheme.
     *
     * @param name STC or VEEC
     * @param headline the line with the result
     * @param steps the table
     * @param rules the list of rules, the first being rule 1
     */
    record Scheme(String name, List<String> headline, List<Step> steps, List<String> rules) {

        Step step(String label) {
            return steps.stream()
                    .filter(s -> s.label().equals(label))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no step " + label + " in " + steps));
        }

        boolean has(String label) {
            return steps.stream().anyMatch(s -> s.label().equals(label));
        }
    }

    /** A row of the table, the cells as printed. */
    record Step(String label, String working, String result, List<Integer> rules) {}

    private record Glyph(float x, float width, String text) {}

    private final List<TreeMap<Integer, List<Glyph>>> pages = new ArrayList<>();

    private PrintedWorking() {}

    static List<Scheme> of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PrintedWorking printed = new PrintedWorking();
            printed.getText(document);
            return printed.schemes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    protected void startPage(PDPage page) {
        pages.add(new TreeMap<>());
    }

    @Override
    protected void writeString(String text, List<TextPosition> positions) {
        TreeMap<Integer, List<Glyph>> lines = pages.get(pages.size() - 1);
        for (TextPosition p : positions) {
            int y = Math.round(p.getYDirAdj());
            int line = lines.containsKey(y - 1) ? y - 1 : lines.containsKey(y + 1) ? y + 1 : y;
            lines.computeIfAbsent(line, l -> new ArrayList<>())
                    .add(new Glyph(p.getXDirAdj(), p.getWidthDirAdj(), p.getUnicode()));
        }
    }

    private List<Scheme> schemes() {
        List<Scheme> schemes = new ArrayList<>();
        Table table = new Table();
        for (TreeMap<Integer, List<Glyph>> lines : pages) {
            for (List<Glyph> line : lines.values()) {
                String text = text(line);
                Matcher heading = SCHEME.matcher(text);
                if (text.contains(" · ABN ") || text.startsWith("Entitlement working ")) {
                    // What stands at the foot and head of every page.
                    table.close();
                } else if (heading.matches()) {
                    schemes.add(scheme(heading.group(1)));
                } else if (text.startsWith("Result: ") || text.startsWith("The number of ")) {
                    last(schemes).headline().add(text);
                } else if (text.equals("Step Working Result Rule")) {
                    table.open(line);
                } else if (text.equals("Rules used")) {
                    table.close();
                    last(schemes).steps().addAll(table.take());
                    table.list();
                } else if (text.startsWith("A step without ") || text.matches("\\d+ Redone .*")) {
                    last(schemes).steps().addAll(table.take());
                    last(schemes).rules().addAll(table.takeRules());
                } else {
                    table.line(line, text);
                }
            }
        }
        return schemes;
    }

    private static Scheme scheme(String name) {
        return new Scheme(name, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    }

    private static Scheme last(List<Scheme> schemes) {
        return schemes.get(schemes.size() - 1);
    }

    private static String text(List<Glyph> line) {
        StringBuilder text = new StringBuilder();
        float end = Float.MAX_VALUE;
        for (Glyph g : line.stream().sorted((a, b) -> Float.compare(a.x(), b.x())).toList()) {
            text.append(g.x() > end + 1 ? " " : "").append(g.text());
            end = g.x() + g.width();
        }
        return text.toString().replaceAll("\\s+", " ").strip();
    }

    /** Puts the lines of a table back into cells, and those of a list into its points. */
    private static final class Table {
        private final List<Float> edges = new ArrayList<>();
        private final List<List<String>> rows = new ArrayList<>();
        private final List<String> rules = new ArrayList<>();
        private boolean inTable;
        private boolean inList;

        void open(List<Glyph> heads) {
            edges.clear();
            for (String head : List.of("S", "W", "R", "R")) {
                float after = edges.isEmpty() ? -1 : edges.get(edges.size() - 1);
                heads.stream()
                        .filter(g -> g.text().equals(head) && g.x() > after + 1)
                        .map(Glyph::x)
                        .min(Float::compare)
                        .ifPresent(edges::add);
            }
            inTable = true;
            inList = false;
        }

        void close() {
            inTable = false;
        }

        void list() {
            inList = true;
        }

        void line(List<Glyph> line, String text) {
            if (inTable) {
                row(line);
            } else if (inList) {
                point(text);
            }
        }

        private void row(List<Glyph> line) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < edges.size(); i++) {
                float from = edges.get(i) - 1;
                float to = i + 1 < edges.size() ? edges.get(i + 1) - 1 : Float.MAX_VALUE;
                cells.add(text(line.stream().filter(g -> g.x() >= from && g.x() < to).toList()));
            }
            if (NUMBERED.matcher(cells.get(0)).matches()) {
                rows.add(cells);
            } else {
                List<String> row = rows.get(rows.size() - 1);
                for (int i = 0; i < row.size(); i++) {
                    row.set(i, (row.get(i) + " " + cells.get(i)).strip());
                }
            }
        }

        private void point(String text) {
            Matcher numbered = NUMBERED.matcher(text);
            if (numbered.matches() && numbered.group(1).equals("" + (rules.size() + 1))) {
                rules.add(numbered.group(2));
            } else if (!rules.isEmpty()) {
                rules.add(rules.remove(rules.size() - 1) + " " + text);
            }
        }

        List<Step> take() {
            List<Step> steps = rows.stream().map(Table::step).toList();
            rows.clear();
            return steps;
        }

        List<String> takeRules() {
            List<String> all = List.copyOf(rules);
            rules.clear();
            inList = false;
            return all;
        }

        private static Step step(List<String> cells) {
            Matcher label = NUMBERED.matcher(cells.get(0));
            label.matches();
            List<Integer> rules =
                    cells.get(3).equals("–")
                            ? List.of()
                            : Pattern.compile(",")
                                    .splitAsStream(cells.get(3))
                                    .map(n -> Integer.valueOf(n.strip()))
                                    .collect(Collectors.toList());
            return new Step(label.group(2), cells.get(1), cells.get(2), rules);
        }
    }
}
