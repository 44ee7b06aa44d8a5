package paperbark.batch;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import paperbark.disk.Staging;
import paperbark.output.BatchInfo;
import paperbark.output.CaseFile;
import paperbark.output.PrintRunFiles;
import paperbark.output.RunFile;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.Packs;
import paperbark.output.paper.PaperPages;
import paperbark.output.paper.PrintRun;
import paperbark.output.paper.RunPack;

/**
 * How fast packs are made: pages a second and the peak of the heap for 40 and 400 copies of the
 * sample jobs, after a warm-up, on one worker (also with a logo on each page) and on all cores, and
 * the print run merged from them. Run by {@code mvn -Pbench verify}; read the ratios of one run,
 * not the figures of two.
 */
public final class PackBench {
    private static final int[] COPIES = {40, 400};
    private static final PrintStream OUT = System.out;

    private PackBench() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException {
        List<CaseFile> cases = cases();
        int cores = Runtime.getRuntime().availableProcessors();
        measure("warm-up", cases, 200, cores, Optional.empty());
        Optional<Path> logo = Optional.of(folderWithLogo());
        for (int copies : COPIES) {
            measure("one worker", cases, copies, 1, Optional.empty());
            measure("a logo", cases, copies, 1, logo);
            measure("all cores", cases, copies, cores, Optional.empty());
        }
    }

    private static Path folderWithLogo() throws IOException {
        BufferedImage logo = new BufferedImage(1200, 300, BufferedImage.TYPE_INT_ARGB);
        Graphics2D graphics = logo.createGraphics();
        graphics.setPaint(new GradientPaint(0, 0, Color.GREEN, 1200, 300, Color.BLUE));
        graphics.fillOval(0, 0, 1200, 300);
        graphics.dispose();
        Path folder = Files.createTempDirectory("logo");
        ImageIO.write(logo, "png", folder.resolve("logo.png").toFile());
        return folder;
    }

    private static void measure(
            String name, List<CaseFile> cases, int copies, int workers, Optional<Path> templates)
            throws IOException {
        List<CaseFile> many = new ArrayList<>();
        for (int i = 0; i < copies; i++) {
            many.add(cases.get(i % cases.size()));
        }
        Path folder = Files.createTempDirectory("packs");
        resetPeaks();
        try (Staging staging = Staging.of(folder.resolve("batch"))) {
            long start = System.nanoTime();
            List<FiledPack> packs =
                    new Packing(
                                    new Packs(templates),
                                    templates,
                                    Optional.empty(),
                                    (what, done, of) -> {},
                                    workers)
                            .make(named(many), staging);
            long packed = System.nanoTime();
            long bytes = printed(packs, staging);
            long merged = System.nanoTime();
            int pages =
                    packs.stream()
                            .flatMap(p -> p.papers().stream())
                            .mapToInt(PaperPages::pageCount)
                            .sum();
            OUT.printf(
                    "%-10s %4d packs, %5d pages: %6.1f pages a second; print run of %5.1f MB in %4.1f s; peak heap %4d MB%n",
                    name,
                    copies,
                    pages,
                    pages * 1e9 / (packed - start),
                    bytes / 1e6,
                    (merged - packed) / 1e9,
                    peakMegabytes());
        }
        Files.delete(folder);
    }

    private static long printed(List<FiledPack> packs, Staging staging) throws IOException {
        List<RunFile> files = PrintRunFiles.of(packs.size());
        List<RunPack> run = new RunOrder(packs).all();
        BatchInfo info = packs.get(0).caseFile().batch();
        long bytes = 0;
        for (int i = 0; i < files.size(); i++) {
            List<RunPack> part = PrintRunFiles.part(run, i);
            bytes +=
                    Files.size(
                            staging.write(
                                    files.get(i).file(),
                                    out ->
                                            PrintRun.write(
                                                    part,
                                                    Optional.empty(),
                                                    Optional.empty(),
                                                    info,
                                                    out)));
        }
        return bytes;
    }

    private static List<CaseFile> named(List<CaseFile> many) {
        List<CaseFile> named = new ArrayList<>();
        for (int i = 0; i < many.size(); i++) {
            CaseFile c = many.get(i);
            named.add(
                    new CaseFile(
                            c.batch(),
                            c.firm(),
                            c.job(),
                            c.entitlements(),
                            c.expected(),
                            c.comparisons(),
                            c.price(),
                            c.statePapers(),
                            c.deadlines(),
                            c.toDo(),
                            c.findings(),
                            c.papers(),
                            i + ".pdf",
                            c.withBuyer(),
                            List.of()));
        }
        return named;
    }

    private static List<CaseFile> cases() {
        Request request = SampleWeek.request(SampleWeek.XLSX, Path.of("target"));
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Cases cases = new Cases(inputs, "bench", request);
        return inputs.jobs().stream().map(job -> cases.of(job, job.reference() + ".pdf")).toList();
    }

    private static void resetPeaks() {
        System.gc();
        ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
    }

    private static long peakMegabytes() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                        .filter(pool -> pool.getType() == MemoryType.HEAP)
                        .mapToLong(pool -> pool.getPeakUsage().getUsed())
                        .sum()
                / 1_000_000;
    }
}
