package paperbark.batch;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
    // The sample week has jobs that are held, which the exit code tells.
    private static final int STOPS_FOUND = 10;
    private static final PrintStream OUT = System.out;
    private static final Path TIME = Path.of("/usr/bin/time");

    private PeerBench() {}

    /** A program: what must be there for it, and the words of the shell that run it. */
    private record Peer(String program, String words) {}

    /** What a process took. */
    private record Taken(double wall, double processor, double megabytes) {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws Exception {
        if (!Files.isExecutable(TIME)) {
            OUT.println(
                    "Side by side: " + TIME + " is missing, without which nothing is measured.");
            return;
        }
        Path folder = Files.createTempDirectory("peers");
        List<Path> documents = dumped(folder);
        Map<String, Peer> peers = peers(folder, documents);
        Map<String, List<Taken>> taken = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            for (Map.Entry<String, Peer> peer : peers.entrySet()) {
                if (isThere(peer.getValue().program())) {
                    run(peer.getValue().words(), folder)
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

    private static void print(String name, List<Taken> rounds, int documents) {
        double processor = median(rounds.stream().map(Taken::processor).toList());
        OUT.printf(
                Locale.ROOT,
                "%-44s %8.1f %10.1f %8.0f %12.1f%n",
                name,
                median(rounds.stream().map(Taken::wall).toList()),
                processor,
                median(rounds.stream().map(Taken::megabytes).toList()),
                documents / processor);
    }

    private static double median(List<Double> values) {
        return values.stream().sorted(Comparator.naturalOrder()).toList().get(values.size() / 2);
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
        String classes = System.getProperty("java.class.path");
        Map<String, Peer> peers = new LinkedHashMap<>();
        String java =
                " -cp '%s' paperbark.cli.Main prepare %s --as-of 2026-11-23 --tables %s --out %s"
                        .formatted(classes, SampleWeek.XLSX, SampleWeek.TABLES, folder);
        String anew = "rm -rf " + folder.resolve("2026-11-23-week-47") + "; ";
        peers.put(
                "Paperbark, tagged, with print run and tables",
                new Peer("java", anew + "java" + java));
        peers.put(
                "the same, compiled once and quickly",
                new Peer("java", anew + "java -XX:TieredStopAtLevel=1 -XX:+UseSerialGC" + java));
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

    private static Optional<Taken> run(String words, Path folder)
            throws IOException, InterruptedException {
        Path measured = folder.resolve("measured");
        List<String> command =
                List.of(
                        TIME.toString(),
                        "-o",
                        measured.toString(),
                        "-f",
                        "%e %U %S %M",
                        "sh",
                        "-c",
                        words);
        int exitCode =
                new ProcessBuilder(command)
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor();
        if (exitCode != 0 && exitCode != STOPS_FOUND) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(measured);
        // A line before it tells of an exit code.
        String[] numbers = lines.get(lines.size() - 1).split(" ");
        return Optional.of(
                new Taken(
                        Double.parseDouble(numbers[0]),
                        Double.parseDouble(numbers[1]) + Double.parseDouble(numbers[2]),
                        Double.parseDouble(numbers[3]) / 1000));
    }
}
