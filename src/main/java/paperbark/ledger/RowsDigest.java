package paperbark.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.DigestUtils;

/** The digest over the rows of one entry, which is told table by table and row by row. */
final class RowsDigest {
    private static final byte[] BETWEEN_TABLES = "\n\n".getBytes(UTF_8);
    private static final byte[] BETWEEN_ROWS = "\n".getBytes(UTF_8);

    private final MessageDigest digest = DigestUtils.getSha256Digest();
    private byte[] before = {};
    private byte[] beforeTable = {};

    /** The next table begins, with rows or without. */
    void table() {
        digest.update(beforeTable);
        beforeTable = BETWEEN_TABLES;
        before = new byte[0];
    }

    /** Takes a row of the table, its cells joined as {@link Seals} has it. */
    void row(byte[] joined) {
        digest.update(before);
        digest.update(joined);
        before = BETWEEN_ROWS;
    }

    /** The digest, once every table is told. */
    String hex() {
        return Hex.encodeHexString(digest.digest());
    }
}
