package paperbark.output.paper;

import static paperbark.output.paper.DiaryTask.LOOK_OVER;
import static paperbark.output.paper.DiaryTask.MIXING_VALVE;
import static paperbark.output.paper.DiaryTask.RELIEF_VALVE;
import static paperbark.output.paper.DiaryTask.WEARING_PARTS;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import paperbark.firm.Product;
import paperbark.job.Job;

/**
 * The first five years of care for a heater, counted from the day of installation, and the days on
 * which the warranties end. The intervals are common practice and the maker's manual goes before
 * them; the handover says so.
 *
 * @param entries every half year
 * @param warranties what is covered, for how long and to which day
 */
public record Diary(List<DiaryEntry> entries, List<Cover> warranties) {
    private static final String OUR_WORK = "Our work";
    private static final int YEARS = 5;
    private static final int MONTHS_BETWEEN = 6;

    /**
     * What a warranty covers.
     *
     * @param what the part or work
     * @param giver who gives it: the firm or the maker's name
     * @param years for how long
     * @param ends its last day when counted from installation; empty while that is open
     */
    public record Cover(String what, String giver, int years, Optional<LocalDate> ends) {

        /** Whether it is the firm's warranty on its own work; otherwise the maker's. */
        public boolean isOurs() {
            return what.equals(OUR_WORK);
        }
    }

    /** Keeps the lists from being changed. */
    public Diary {
        entries = List.copyOf(entries);
        warranties = List.copyOf(warranties);
    }

    /**
     * The diary of a job.
     *
     * @param start the day since which the heater is in; without it all days are empty
     */
    public static Diary of(
            Job job,
            Optional<LocalDate> start,
            String firmName,
            Optional<Integer> workmanshipYears) {
        List<DiaryEntry> entries =
                IntStream.rangeClosed(1, YEARS * 12 / MONTHS_BETWEEN)
                        .mapToObj(i -> entry(i * MONTHS_BETWEEN, start))
                        .toList();
        List<Cover> covers = new ArrayList<>();
        workmanshipYears.ifPresent(y -> covers.add(cover(OUR_WORK, firmName, y, start)));
        job.heater().product().ifPresent(p -> covers.addAll(makersCovers(p, start)));
        return new Diary(entries, covers);
    }

    private static DiaryEntry entry(int months, Optional<LocalDate> start) {
        List<DiaryTask> tasks = new ArrayList<>(List.of(RELIEF_VALVE));
        if (months % 12 == 0) {
            tasks.addAll(List.of(MIXING_VALVE, LOOK_OVER));
        }
        if (months % (YEARS * 12) == 0) {
            tasks.add(WEARING_PARTS);
        }
        return new DiaryEntry(words(months), start.map(d -> d.plusMonths(months)), tasks);
    }

    private static String words(int months) {
        if (months < 12) {
            return months + " months";
        }
        String half = months % 12 == 0 ? "" : "½";
        return months == 12 ? "1 year" : months / 12 + half + " years";
    }

    private static List<Cover> makersCovers(Product product, Optional<LocalDate> start) {
        List<Cover> covers = new ArrayList<>();
        String maker = product.maker();
        product.tankWarrantyYears().ifPresent(y -> covers.add(cover("Tank", maker, y, start)));
        String second = product.isSolar() ? "Collectors" : "Heat pump";
        product.collectorWarrantyYears().ifPresent(y -> covers.add(cover(second, maker, y, start)));
        product.partsWarrantyYears()
                .ifPresent(y -> covers.add(cover("Other parts", maker, y, start)));
        return covers;
    }

    private static Cover cover(String what, String giver, int years, Optional<LocalDate> start) {
        return new Cover(what, giver, years, start.map(d -> d.plusYears(years).minusDays(1)));
    }
}
