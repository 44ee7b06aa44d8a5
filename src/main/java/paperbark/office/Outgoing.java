package paperbark.office;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.output.LetterView;
import paperbark.value.Email;

/**
 * A letter that is due, with what goes with it.
 *
 * @param batch the batch whose papers they are
 * @param kind to whom
 * @param stem its name in that batch's folder, without ending
 * @param to the address, where one is known
 * @param name whom it is for; empty text where that is not known
 * @param jobs the jobs that it is about
 * @param claim the claim, for a buyer
 * @param enclosures what goes with it
 * @param apart what belongs to it and stays
 */
record Outgoing(
        String batch,
        Kind kind,
        String stem,
        Optional<Email> to,
        String name,
        List<LetterView.OfJob> jobs,
        Optional<LetterView.OfClaim> claim,
        List<Enclosure> enclosures,
        List<LetterView.Apart> apart) {

    /** To whom; each kind has a template of that word. */
    enum Kind {
        OWNER("owner"),
        MAKER("maker"),
        BUYER("buyer");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The endings of the files of a letter to them. */
        List<String> endings() {
            return this == BUYER ? List.of(".eml", ".csv", ".html") : List.of(".eml");
        }

        /** The word for people, and the name of the template. */
        String word() {
            return word;
        }
    }

    /** Its path below the folder of drafts, with an ending such as {@code .eml}. */
    String path(String ending) {
        return batch + "/" + stem + ending;
    }

    /**
     * What changes when anything in it does, and also when a file of it is touched or moved.
     *
     * @param written the firm, the text of the template and all else that it is written with
     */
    String stamp(String written) {
        return digest(written, enclosures.toString());
    }

    /**
     * What changes when anything in it does and not otherwise: every file is read.
     *
     * @param written as for the stamp
     * @throws IOException when a file cannot be read
     */
    String key(String written) throws IOException {
        List<String> all = new ArrayList<>();
        for (Enclosure enclosure : enclosures) {
            all.add(enclosure.key());
        }
        return digest(written, all.toString());
    }

    private String digest(String written, String enclosed) {
        String all =
                String.join(
                        "\n",
                        written,
                        to.map(Email::full).orElse(""),
                        name,
                        jobs.toString(),
                        claim.toString(),
                        enclosed,
                        apart.toString());
        return DigestUtils.sha256Hex(all);
    }
}
