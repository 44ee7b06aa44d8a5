package paperbark.rules;

/**
 * Where rules were read.
 *
 * @param id name used in the rule tables
 * @param title title of the document or page
 * @param publisher who published it
 * @param instrument kind and number of the instrument; may be empty
 * @param version its version or compilation; may be empty
 */
public record Source(String id, String title, String publisher, String instrument, String version) {

    /** Title, version and publisher, as paper shows them. */
    public String inWords() {
        String what = version.isEmpty() ? title : title + " (" + version + ")";
        return what + ", " + publisher;
    }
}
