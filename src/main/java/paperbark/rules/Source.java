package paperbark.rules;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Where rules were read.
 *
 * @param id name used in the rule tables
 * @param title title of the document or page
 * @param publisher who published it
 * @param instrument kind and number of the instrument; may be empty
 * @param version its version or compilation; may be empty
 * @param readOn day on which it was read; empty where it is known from others or from memory
 * @param link its address, its publisher's site, or words that say where it is
 */
public record Source(
        String id,
        String title,
        String publisher,
        String instrument,
        String version,
        Optional<LocalDate> readOn,
        String link) {

    /** Title, version and publisher, as paper shows them. */
    public String inWords() {
        String what = version.isEmpty() ? title : title + " (" + version + ")";
        return what + ", " + publisher;
    }
}
