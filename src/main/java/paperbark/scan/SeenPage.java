package paperbark.scan;

import java.util.List;
import java.util.Optional;
import paperbark.output.paper.SignBox;

/**
 * A page of a pile, as it was seen.
 *
 * @param number its place in the pile, from 1
 * @param empty whether nothing is on it, as on the back of most sheets
 * @param place where it belongs; absent where that is not known
 * @param why why it is not known, in a sentence; empty text where it is, and for an empty page
 * @param quarterTurns quarter turns to the right after which it stands upright, 0 to 3
 * @param looked whether all its boxes could be looked into
 * @param blank the boxes on it that are empty, each with a small picture
 */
public record SeenPage(
        int number,
        boolean empty,
        Optional<PrintedPage> place,
        String why,
        int quarterTurns,
        boolean looked,
        List<BlankBox> blank) {

    static final String NO_MARK = "It has no mark that can be read.";

    /** Keeps the list from being changed. */
    public SeenPage {
        blank = List.copyOf(blank);
    }

    /**
     * An empty box.
     *
     * @param box which one
     * @param picture the box and what lies about it, as PNG; not to be changed
     */
    public record BlankBox(SignBox box, byte[] picture) {}

    /** The same page in a place that somebody else told. */
    public SeenPage at(PrintedPage told) {
        return at(told, quarterTurns);
    }

    /** The same page in a place that something else told, and how it lies. */
    SeenPage at(PrintedPage told, int turns) {
        return new SeenPage(number, false, Optional.of(told), "", turns, false, List.of());
    }

    /** Whether it has no mark, and nothing told its place so far. */
    public boolean isUnmarked() {
        return place.isEmpty() && !empty && why.equals(NO_MARK);
    }

    /** The empty boxes as the ledger counts them: -1 where nobody looked. */
    public int blanks() {
        return looked || !blank.isEmpty() ? blank.size() : -1;
    }
}
