package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;

/**
 * The sample week again and again, each with job numbers, serials, certificates and houses of its
 * own, so that no job is taken for one of another week.
 */
public final class SampleWeeks {
    /** The jobs of a sample week. */
    public static final int JOBS = 40;

    private static final Set<String> OWN =
            Set.of(
                    "Job no.",
                    "Fixes earlier job",
                    "Tank S/N",
                    "Collector S/Ns",
                    "HP S/N",
                    "Plumb. cert no.",
                    "Elec. cert no.");
    private static final Pattern NUMBER = Pattern.compile("(?<=[A-Z-])\\d{4,6}|\\d{16}");
    private static final Pattern HOUSE = Pattern.compile("^\\d+");

    // Wider apart than the numbers of one kind are in the sample week.
    private static final long STEP = 300;
    private static final long LONG_STEP = 10_000;

    private SampleWeeks() {}

    /** Writes a register with so many jobs, of the week of that number and those after it. */
    public static Path write(Path register, int firstWeek, int jobs) throws IOException {
        List<List<String>> week = new ArrayList<>();
        try (CSVParser parser =
                CSVParser.parse(Files.newBufferedReader(SampleWeek.CSV), CSVFormat.RFC4180)) {
            parser.forEach(row -> week.add(List.of(row.values())));
        }
        List<String> headings =
                week.get(0).stream().map(heading -> heading.replace("\ufeff", "")).toList();
        try (CSVPrinter printer =
                new CSVPrinter(Files.newBufferedWriter(register), CSVFormat.RFC4180)) {
            printer.printRecord(headings);
            for (int i = 0; i < jobs; i++) {
                printer.printRecord(row(headings, week.get(1 + i % JOBS), firstWeek + i / JOBS));
            }
        }
        return register;
    }

    private static List<String> row(List<String> headings, List<String> job, int week) {
        List<String> row = new ArrayList<>();
        for (int i = 0; i < job.size(); i++) {
            String heading = headings.get(i);
            String value = job.get(i);
            if (OWN.contains(heading)) {
                value = NUMBER.matcher(value).replaceAll(n -> moved(n.group(), week));
            } else if (heading.equals("Site address")) {
                value =
                        HOUSE.matcher(value)
                                .replaceAll(n -> "" + (Integer.parseInt(n.group()) + week));
            }
            row.add(value);
        }
        return row;
    }

    private static String moved(String number, int week) {
        long step = number.length() > 6 ? LONG_STEP : STEP;
        String moved = Long.toString(Long.parseLong(number) + week * step);
        return "0".repeat(Math.max(0, number.length() - moved.length())) + moved;
    }
}
