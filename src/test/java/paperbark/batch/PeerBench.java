package paperbark.batch;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.io.FileUtils;
import paperbark.output.CaseFile;
import paperbark.output.paper.MarkupDump;

/**
 * Whole processes side by side: the sample week from the shell, and other programs on the mark-up
 * of the same packs, each fed in the way that suits it best. Medians of several rounds, in which
 * all take turns; on a shared machine read the processor time and the ratios. Run by {@code mvn
 * -Pbench verify}; {@code -Dbench.rounds=1} makes it short. Programs that are missing are told so.
 */
public final class PeerBench {
    private static final int ROUNDS = Integer.getInteger("bench.rounds", 5);
    private static final PrintStream OUT = System.out;

    private PeerBench() {}

    /** A program: what must be there for it, and the words of the shell that run it. */
    private record Peer(String program, String words) {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws Exception {
        if (!TimedProcess.isPossible()) {
            OUT.println("Side by side: GNU time is missing, without which nothing is measured.");
            return;
        }
        Path folder = Files.createTempDirectory("peers");
        List<Path> documents = dumped(folder);
        Map<String, Peer> peers = peers(folder, documents);
        Map<String, List<TimedProcess>> taken = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            for (Map.Entry<String, Peer> peer : peers.entrySet()) {
                if (isThere(peer.getValue().program())) {
                    TimedProcess.run(peer.getValue().words(), folder)
                            .ifPresent(
                                    one ->
                                            taken.computeIfAbsent(
                                                            peer.getKey(), n -> new ArrayList<>())
                                                    .add(one));
                }
            }
        }
        OUT.printf("%d documents, medians of %d rounds%n", documents.size(), ROUNDS);
        OUT.printf("%-44s %8s %10s %8s %12s%n", "", "wall s", "processor", "MB", "documents/s");
        for (String name : peers.keySet()) {
            if (taken.containsKey(name)) {
                print(name, taken.get(name), documents.size());
            } else {
                boolean there = isThere(peers.get(name).program());
                OUT.printf("%-44s %s%n", name, there ? "failed" : "is not installed");
            }
        }
        FileUtils.deleteDirectory(folder.toFile());
    }

    private static void print(String name, List<TimedProcess> rounds, int documents) {
        double processor = TimedProcess.median(rounds, TimedProcess::processor);
        OUT.printf(
                Locale.ROOT,
                "%-44s %8.1f %10.1f %8.0f %12.1f%n",
                name,
                TimedProcess.median(rounds, TimedProcess::wall),
                processor,
                TimedProcess.median(rounds, TimedProcess::megabytes),
                documents / processor);
    }

    private static List<Path> dumped(Path folder) throws IOException {
        Request request = SampleWeek.request(SampleWeek.XLSX, Path.of("target"));
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Cases cases = new Cases(inputs, "bench", request);
        List<Path> documents = new ArrayList<>();
        for (var job : inputs.jobs()) {
            CaseFile file = cases.of(job, job.reference() + ".pdf");
            documents.add(MarkupDump.write(file, folder.resolve(job.reference() + ".html")));
        }
        return documents;
    }

    private static Map<String, Peer> peers(Path folder, List<Path> documents) throws IOException {
        StringBuilder lines = new StringBuilder();
        for (Path document : documents) {
            lines.append(document).append(' ').append(document).append(".pdf\n");
        }
        Path list = Files.writeString(folder.resolve("list"), lines);
        Map<String, Peer> peers = new LinkedHashMap<>();
        String anew = "rm -rf " + folder.resolve("2026-11-23-week-47") + "; ";
        peers.put(
                "Paperbark, tagged, with print run and tables",
                new Peer("java", anew + TimedProcess.prepare("", SampleWeek.XLSX, folder)));
        peers.put(
                "the same, compiled again as it runs",
                new Peer(
                        "java",
                        anew
                                + TimedProcess.prepare(
                                        "-XX:TieredStopAtLevel=4", SampleWeek.XLSX, folder)));
        peers.put(
                "wkhtmltopdf, one process, no scripts",
                new Peer(
                        "wkhtmltopdf",
                        "wkhtmltopdf -q --javascript-delay 0 --read-args-from-stdin < " + list));
        peers.put(
                "WeasyPrint, a process a document",
                new Peer(
                        "weasyprint",
                        "for f in "
                                + folder
                                + "/*.html; do weasyprint -q $f $f.pdf || exit; done"));
        peers.put(
                "Chromium, a process a document",
                new Peer(
                        "chromium",
                        "for f in "
                                + folder
                                + "/*.html; do chromium --headless --no-sandbox --disable-gpu"
                                + " --user-data-dir="
                                + folder.resolve("chromium")
                                + " --print-to-pdf=$f.pdf file://$f; done"));
        peers.put(
                "LibreOffice, one process",
                new Peer(
                        "soffice",
                        "soffice -env:UserInstallation=file://"
                                + folder.resolve("office")
                                + " --headless --convert-to pdf --outdir "
                                + folder
                                + " "
                                + folder
                                + "/*.html"));
        return peers;
    }

    private static boolean isThere(String program) {
        for (String folder : System.getenv("PATH").split(":")) {
            if (Files.isExecutable(Path.of(folder, program))) {
                return true;
            }
        }
        return false;
    }
}
