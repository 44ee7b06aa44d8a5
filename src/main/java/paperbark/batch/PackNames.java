package paperbark.batch;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import paperbark.disk.FileNames;
import paperbark.disk.Hashes;
import paperbark.job.Job;

/**
 * File names that are safe everywhere: plain letters, digits, hyphen and underscore. A job number
 * that is such a name already is used as it is; any other is cut down to one and gets a few digits
 * of its hash, so that no two meet.
 */
final class PackNames {
    private static final Pattern SAFE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,39}");
    // Names that Windows keeps for devices, with any ending.
    private static final Pattern RESERVED =
            Pattern.compile("(?i)(con|prn|aux|nul|clock|com[0-9]|lpt[0-9])");
    private static final int HASH_DIGITS = 6;

    private PackNames() {}

    /** A name for each job, in the same order, unique whatever the case. */
    static List<String> of(List<Job> jobs) {
        Set<String> taken = new HashSet<>();
        return jobs.stream()
                .map(
                        job -> {
                            String plain = job.reference();
                            boolean usable =
                                    SAFE.matcher(plain).matches()
                                            && !RESERVED.matcher(plain).matches();
                            String name = usable ? plain : hashed(plain, "");
                            if (!taken.add(name.toLowerCase(Locale.ROOT))) {
                                name = hashed(plain, "row " + job.origin().row());
                                taken.add(name.toLowerCase(Locale.ROOT));
                            }
                            return name + ".pdf";
                        })
                .toList();
    }

    private static String hashed(String text, String more) {
        byte[] key = (text + "\n" + more).getBytes(StandardCharsets.UTF_8);
        return FileNames.slug(text.replaceAll("[^A-Za-z0-9_-]+", "-"))
                + "-"
                + Hashes.sha256(key).substring(0, HASH_DIGITS);
    }
}
