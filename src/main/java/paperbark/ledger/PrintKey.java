package paperbark.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.Optional;
import org.apache.commons.codec.DecoderException;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;

/**
 * The secret that a ledger's prints are made with. It lies in a file beside the ledger and in no
 * batch folder and no copy of the ledger, so that nobody who has those alone can try out what a
 * fact was.
 */
public final class PrintKey {
    private static final int BYTES = 32;
    // Long enough that two values of one fact never share it by chance.
    private static final int LENGTH = 16;

    private final HmacUtils hmac;

    private PrintKey(byte[] secret) {
        this.hmac = new HmacUtils(HmacAlgorithms.HMAC_SHA_256, secret);
    }

    /**
     * The key of a ledger; empty where there is none.
     *
     * @throws LedgerException when the file is no key
     */
    static Optional<PrintKey> in(LedgerPlace place) {
        Path file = place.key();
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try {
            byte[] secret = Hex.decodeHex(Files.readString(file).strip());
            if (secret.length == BYTES) {
                return Optional.of(new PrintKey(secret));
            }
        } catch (DecoderException | java.nio.charset.CharacterCodingException notOurs) {
            // Said below.
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        throw new LedgerException(
                file.getFileName() + " is not as the program wrote it.",
                "Bring back a copy of it; where there is none move it away, and a new one is begun.");
    }

    /** The key of a ledger, made by chance where there is none. */
    static PrintKey of(LedgerPlace place) {
        return in(place).orElseGet(() -> make(place));
    }

    private static PrintKey make(LedgerPlace place) {
        byte[] secret = new byte[BYTES];
        new SecureRandom().nextBytes(secret);
        put(place, Hex.encodeHexString(secret) + "\n");
        return new PrintKey(secret);
    }

    /** Gives a ledger the key of another, where it has none of its own. */
    static void carry(LedgerPlace from, LedgerPlace to) {
        if (Files.exists(from.key()) && !Files.exists(to.key())) {
            try {
                put(to, Files.readString(from.key()));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** Whole or not at all, and readable by its owner alone before anything is in it. */
    private static void put(LedgerPlace place, String text) {
        Path file = place.key();
        Path part = file.resolveSibling("." + file.getFileName() + ".part");
        try {
            Files.deleteIfExists(part);
            Files.createFile(part);
            LedgerFile.keepPrivate(part);
            Files.writeString(part, text, StandardOpenOption.SYNC, StandardOpenOption.WRITE);
            Files.move(part, file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A name for the key that tells nothing of it. */
    String id() {
        return print("key");
    }

    /** The print of a text, which stands for nothing without the key. */
    String print(String text) {
        return hmac.hmacHex(text).substring(0, LENGTH);
    }
}
