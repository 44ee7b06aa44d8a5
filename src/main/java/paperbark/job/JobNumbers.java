package paperbark.job;

import java.math.BigInteger;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.sheet.ColumnNames;
import paperbark.value.Address;
import paperbark.value.Serial;

/**
 * Numbers for the jobs of a list that has none. A number follows from the site, and where the list
 * has several heaters there from the serial too, so that a job has the same number in every later
 * list, wherever its row stands and whatever else is corrected.
 *
 * @param form what the firm wants of a number, e.g. {@code HW-*}; the star stands for what differs
 */
public record JobNumbers(String form) {
    /** Stands for what differs from job to job. */
    private static final String STAR = "*";

    // Without letters that look like digits or like each other on a scan.
    private static final String SIGNS = "346789ABCDEFGHJKLMNPQRTUVWXY";
    private static final int LENGTH = 7;

    /**
     * Whether the firm's table of columns asks for numbers: what it says of every job has a star.
     */
    public static Optional<JobNumbers> asked(ColumnNames<Field> names) {
        return names.always(Field.JOB).filter(form -> form.contains(STAR)).map(JobNumbers::new);
    }

    /** Whether a job has nothing but the form in the place of its number. */
    boolean isWanted(Job job) {
        return job.reference().equals(form);
    }

    /** Whether a number is of this form, so that it may be the program's own. */
    public boolean isLike(String reference) {
        int star = form.indexOf(STAR);
        return reference.length() == form.length() - 1 + LENGTH
                && reference.startsWith(form.substring(0, star))
                && reference.endsWith(form.substring(star + 1));
    }

    /**
     * The jobs with their numbers, in their order; a job of which neither site nor serial is known
     * keeps the form.
     */
    List<Job> give(List<Job> jobs) {
        Map<String, Long> bySite =
                jobs.stream()
                        .filter(this::isWanted)
                        .map(JobNumbers::site)
                        .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        return jobs.stream().map(job -> isWanted(job) ? numbered(job, bySite) : job).toList();
    }

    private Job numbered(Job job, Map<String, Long> bySite) {
        String site = site(job);
        boolean alone = !site.isEmpty() && bySite.get(site) == 1;
        String serial = alone ? "" : job.heater().tankSerial().map(Serial::key).orElse("");
        String known = (site + "\n" + serial).strip();
        return known.isEmpty() ? job : job.withReference(form.replace(STAR, signs(known)));
    }

    /** The site as compared; empty where nobody could find it. */
    private static String site(Job job) {
        Address address = job.site().address();
        return address.street().isEmpty()
                ? ""
                : (address + "|" + job.site().position().orElse(""))
                        .toUpperCase(Locale.ROOT)
                        .replaceAll("[^\\p{L}\\p{Nd}|]", "");
    }

    private static String signs(String known) {
        BigInteger base = BigInteger.valueOf(SIGNS.length());
        BigInteger rest = new BigInteger(1, digest(known));
        StringBuilder signs = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            BigInteger[] parts = rest.divideAndRemainder(base);
            signs.append(SIGNS.charAt(parts[1].intValue()));
            rest = parts[0];
        }
        return signs.toString();
    }

    private static byte[] digest(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            text.chars()
                    .forEach(
                            sign -> {
                                digest.update((byte) (sign >> Byte.SIZE));
                                digest.update((byte) sign);
                            });
            return digest.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
