package paperbark.output.form;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import paperbark.finding.Finding;
import paperbark.sheet.Reading;

/**
 * Fills every form of a folder, whoever made it, and counts what comes of it. Not a test: such
 * forms are not ours to ship. {@code java -cp ... paperbark.output.form.ForeignForms FOLDER}
 */
final class ForeignForms {
    private static final String NAME = "Nguyễn Łukasz";

    private ForeignForms() {}

    /** Prints a line a form and the counts. */
    public static void main(String[] arguments) throws IOException {
        Map<String, Integer> counts = new TreeMap<>();
        try (Stream<Path> files = Files.walk(Path.of(arguments[0]))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".pdf")).sorted().toList()) {
                String outcome = outcome(Files.readAllBytes(file));
                counts.merge(outcome.replaceFirst(":.*", ""), 1, Integer::sum);
                System.out.println(file.getFileName() + "  " + outcome);
            }
        }
        System.out.println(counts);
    }

    private static String outcome(byte[] form) throws IOException {
        Reading<String> list = FieldList.of("theirs.pdf", form);
        if (list.result().isEmpty()) {
            return "refused: " + list.findings().get(0).fact();
        }
        if (list.result().get().startsWith("page,")) {
            return "no fields";
        }
        List<String> table = new ArrayList<>(List.of("field,value"));
        int fields = 0;
        for (CSVRecord row :
                CSVFormat.DEFAULT
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get()
                        .parse(new StringReader(list.result().get()))) {
            table.add('"' + row.get("field").replace("\"", "\"\"") + "\",\"" + value(row) + '"');
            fields++;
        }
        Path folder = Files.createTempDirectory("forms");
        long start = System.nanoTime();
        Filling.Result result = Filling.of(folder, form, table.toArray(String[]::new));
        long took = (System.nanoTime() - start) / 1_000_000;
        if (result.filled().papers().isEmpty()) {
            return "refused: " + result.findings().get(0).fact();
        }
        if (System.getProperty("forms.keep") != null) {
            Files.write(
                    Path.of(System.getProperty("forms.keep"), folder.getFileName() + ".pdf"),
                    result.pdf());
        }
        return (result.findings().isEmpty() ? "filled: " : "filled with checks: ")
                + fields
                + " fields, "
                + took
                + " ms, "
                + result.findings().stream().map(ForeignForms::shortly).distinct().toList();
    }

    private static String shortly(Finding finding) {
        return finding.code().code();
    }

    private static String value(CSVRecord row) {
        return switch (row.get("type")) {
            case "text", "lines of text", "comb" -> NAME;
            case "tick box" -> "yes";
            case "choice", "list", "radio group" -> row.get("options").split("; ")[0];
            default -> "";
        };
    }
}
