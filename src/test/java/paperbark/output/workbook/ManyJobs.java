package paperbark.output.workbook;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.CaseFile;
import paperbark.output.Jobs;

/**
 * Builds the workbook of very many made-up jobs, for a process of its own with a small heap. Prints
 * the seconds it took, for whoever runs it by hand on a quiet machine.
 */
final class ManyJobs {
    private static final List<String> BUYERS =
            List.of("Kestrel Certificates", "Pipit and Wren", "Whimbrel Exchange");

    private ManyJobs() {}

    /**
     * Writes the workbook.
     *
     * @param arguments number of jobs, file to write
     */
    public static void main(String[] arguments) throws IOException {
        BatchView view = view(Integer.parseInt(arguments[0]));
        long start = System.nanoTime();
        byte[] workbook = SummaryWorkbook.of(view);
        PrintStream out = System.out;
        out.printf("%.1f%n", (System.nanoTime() - start) / 1e9);
        Files.write(Path.of(arguments[1]), workbook);
    }

    static BatchView view(int jobs) {
        List<CaseFile> cases = new ArrayList<>();
        for (int i = 0; i < jobs; i++) {
            cases.add(
                    new Jobs("SB-" + (10_000 + i), "Owner " + i, "Ballan")
                            .row(i + 2)
                            .installed(LocalDate.of(2026, 11, 1).plusDays(i % 20))
                            .stc(5 + i % 40, BUYERS.get(i % 3), "36." + (10 + i % 90))
                            .veec(3 + i % 25, BUYERS.get((i + 1) % 3), "71.255")
                            .price((4000 + i % 3000) + ".55", "754.95")
                            .caseFile());
        }
        return BatchViews.of(true, cases);
    }
}
