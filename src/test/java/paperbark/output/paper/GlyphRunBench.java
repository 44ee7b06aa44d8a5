package paperbark.output.paper;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;

/**
 * How much a pack costs beside the least that it could cost: PDFBox writing the same runs of text
 * and the same boxes at known places, untagged. Both in one process and in turns, so that the ratio
 * holds on a busy machine too. Run by {@code mvn -Pbench verify}; {@link SpeedTest} is its short
 * form.
 */
final class GlyphRunBench {
    private static final int ROUNDS = Integer.getInteger("bench.rounds", 5);
    private static final int PACKS_A_ROUND = 240;
    private static final PrintStream OUT = System.out;

    private final List<CaseFile> jobs =
            List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump());
    private final Packs packs = new Packs(Optional.empty());
    private final List<GlyphRuns> known = new ArrayList<>();

    GlyphRunBench() throws IOException {
        for (CaseFile job : jobs) {
            known.add(GlyphRuns.of(packs.make(job, List.of()).pdf()));
        }
    }

    /** Processor time of the process for as many packs and as many bare documents, nanoseconds. */
    record Round(int documents, long packed, long bare) {
        /** How many times as much a pack costs. */
        double times() {
            return (double) packed / bare;
        }
    }

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException {
        GlyphRunBench bench = new GlyphRunBench();
        for (int n = 1; n <= ROUNDS; n++) {
            Round round = bench.round(PACKS_A_ROUND);
            OUT.printf(
                    Locale.ROOT,
                    "after %4d packs: %5.1f packs and %5.1f bare documents a second of processor, %4.1f times as much%n",
                    n * PACKS_A_ROUND,
                    round.documents() * 1e9 / round.packed(),
                    round.documents() * 1e9 / round.bare(),
                    round.times());
        }
    }

    /** Makes so many packs and writes as many bare documents. */
    Round round(int documents) throws IOException {
        long begun = processor();
        for (int i = 0; i < documents; i++) {
            packs.make(jobs.get(i % jobs.size()), List.of());
        }
        long made = processor();
        for (int i = 0; i < documents; i++) {
            known.get(i % known.size()).write();
        }
        return new Round(documents, made - begun, processor() - made);
    }

    // Of the process: a paper is made in a thread of its own.
    private static long processor() {
        return ((com.sun.management.OperatingSystemMXBean)
                        ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
