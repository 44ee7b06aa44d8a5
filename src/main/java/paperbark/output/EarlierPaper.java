package paperbark.output;

import java.time.LocalDate;
import java.util.List;

/**
 * A paper that went out with an earlier batch.
 *
 * @param batch name of the batch
 * @param day day of that batch
 * @param pack path of the pack in the batch folder
 * @param changed what it says that is not so any more; nothing where it merely had empty boxes
 * @param signed whether the register says that it was signed
 * @param came whether it came back, in words; empty text of a paper that nobody signs, and where no
 *     papers are scanned
 */
public record EarlierPaper(
        String batch,
        LocalDate day,
        String pack,
        List<String> changed,
        boolean signed,
        String came) {

    /** Keeps the list from being changed. */
    public EarlierPaper {
        changed = List.copyOf(changed);
    }
}
