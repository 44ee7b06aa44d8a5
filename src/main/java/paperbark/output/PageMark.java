package paperbark.output;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.codec.binary.Base32;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * What the scan mark of a page says, e.g. {@code SB-1032|stc|4|K3QA}.
 *
 * @param job the job number; a long one only as far as the mark has room for it
 * @param paper name of the paper's kind
 * @param page the page of the pack, from 1
 * @param batch a few letters that tell the batch; empty on pages of earlier programs
 */
public record PageMark(String job, String paper, int page, Optional<String> batch) {
    // Longer references would need a mark too fine for a fax.
    private static final int LONGEST_REFERENCE = 60;
    private static final int LETTERS_OF_BATCH = 4;
    private static final Pattern FORM =
            Pattern.compile("(.{1,60})\\|([a-z-]{1,30})\\|([1-9][0-9]{0,3})(?:\\|([A-Z2-7]{4}))?");

    /** The mark of a page. */
    public static PageMark of(String reference, String paper, int page, String batch) {
        return new PageMark(
                shortened(reference), paper, page, Optional.of(batchLetters(reference, batch)));
    }

    private static String shortened(String reference) {
        return reference.length() <= LONGEST_REFERENCE
                ? reference
                : reference.substring(0, LONGEST_REFERENCE);
    }

    /** The letters by which the pages of a job's pack tell the batch that printed them. */
    public static String batchLetters(String reference, String batch) {
        return new Base32()
                .encodeToString(DigestUtils.sha256(batch + "\n" + reference))
                .substring(0, LETTERS_OF_BATCH);
    }

    /** Reads a mark; empty where it is none of ours. */
    public static Optional<PageMark> parse(String text) {
        Matcher mark = FORM.matcher(text);
        return mark.matches()
                ? Optional.of(
                        new PageMark(
                                mark.group(1),
                                mark.group(2),
                                Integer.parseInt(mark.group(3)),
                                Optional.ofNullable(mark.group(4))))
                : Optional.empty();
    }

    /** The text of the mark. */
    public String text() {
        return job + "|" + paper + "|" + page + batch.map(letters -> "|" + letters).orElse("");
    }
}
