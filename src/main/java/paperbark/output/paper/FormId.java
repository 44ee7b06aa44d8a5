package paperbark.output.paper;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import paperbark.job.Stage;

/**
 * What a sheet with live fields says of itself, so that what was typed finds its row again.
 *
 * @param job number of the job
 * @param register SHA-256 of the register
 * @param sheet the register's sheet; empty for a CSV file
 * @param row 1-based row of the job in the register
 * @param stage how far the job had come by that row
 */
public record FormId(String job, String register, String sheet, int row, Stage stage) {
    /** Name of the hidden field, and of the document's own entry, that hold it. */
    public static final String NAME = "paperbark";

    // To be counted up whenever fields are named or read in another way.
    private static final String FORM = "form-1";
    private static final int PARTS = 6;

    /** As it stands in the document. */
    public String text() {
        return String.join(
                " ", FORM, register, String.valueOf(row), stage.name(), plain(job), plain(sheet));
    }

    /** What a document says; empty where this program cannot tell what it is. */
    public static Optional<FormId> parse(String text) {
        String[] parts = text.split(" ", -1);
        if (parts.length != PARTS
                || !parts[0].equals(FORM)
                || !parts[1].matches("[0-9a-f]{64}")
                || !parts[2].matches("[1-9][0-9]{0,6}")) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    new FormId(
                            read(parts[4]),
                            parts[1],
                            read(parts[5]),
                            Integer.parseInt(parts[2]),
                            Stage.valueOf(parts[3])));
        } catch (IllegalArgumentException damaged) {
            return Optional.empty();
        }
    }

    /** Name of the live field of a fact; a fact may be asked for in several boxes. */
    public String field(String key, int box) {
        return prefix() + key + (box == 1 ? "" : "/" + box);
    }

    /** The key of the fact that a live field asks for; empty where the field is not ours. */
    public Optional<String> key(String field) {
        return field.startsWith(prefix())
                ? Optional.of(field.substring(prefix().length()).replaceFirst("/\\d+$", ""))
                : Optional.empty();
    }

    /** A point would part the name. */
    private String prefix() {
        return job.replace('.', '_') + "/";
    }

    private static String plain(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String read(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }
}
