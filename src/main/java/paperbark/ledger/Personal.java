package paperbark.ledger;

import org.apache.commons.codec.digest.DigestUtils;

/**
 * What a version of a job tells of a person. All of it can be emptied; the seal stays, and without
 * the salt nobody can try out what it may have been.
 *
 * @param site what two sites are compared by; empty text where it is not known
 * @param facts the prints of the job's facts
 * @param salt a word by chance; empty text once all is emptied
 */
record Personal(String site, String facts, String salt) {
    /** The digest that stands for it in the seal of the entry. */
    String seal() {
        return DigestUtils.sha256Hex(String.join("\u001f", salt, site, facts));
    }

    /** Whether nothing is left. */
    boolean isEmptied() {
        return salt.isEmpty() && site.isEmpty() && facts.isEmpty();
    }
}
