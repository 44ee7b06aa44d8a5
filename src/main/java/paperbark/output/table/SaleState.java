package paperbark.output.table;

import java.util.Arrays;
import paperbark.offer.Standing;
import paperbark.output.CaseFile;
import paperbark.value.SchemeName;

/** As what a priced job is counted: sales that are made stand apart from those that are to come. */
enum SaleState {
    INSTALLED("installed"),
    INSTALLED_HELD("installed, held"),
    /** Nobody knows since when it is in, or the day is to come; so it lies in no quarter yet. */
    UNDATED("installed, day not known"),
    BOOKED("booked"),
    BOOKED_HELD("booked, held");

    private final String word;

    SaleState(String word) {
        this.word = word;
    }

    /** The word shown to people. */
    String word() {
        return word;
    }

    static SaleState of(String word) {
        return Arrays.stream(values()).filter(c -> c.word.equals(word)).findFirst().orElseThrow();
    }

    static SaleState of(CaseFile file) {
        boolean held =
                Arrays.stream(SchemeName.values()).anyMatch(s -> file.standing(s) == Standing.HELD);
        if (file.doneOn().isPresent()) {
            return held ? INSTALLED_HELD : INSTALLED;
        }
        if (file.job().isInstalled()) {
            return UNDATED;
        }
        return held ? BOOKED_HELD : BOOKED;
    }
}
