package paperbark.cli;

import java.io.Console;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Map;
import java.util.Optional;

/**
 * Text for a console that shows only the letters of its code page, as those of Windows do (850,
 * 437, 1252): what it lacks comes out as the nearest plain letters. Files and pipes get UTF-8.
 */
final class ConsoleText extends FilterWriter {
    private static final Map<Integer, String> PLAIN =
            Map.of(
                    0x2026, "...", 0x2010, "-", 0x2013, "-", 0x2014, "-", 0x2212, "-", 0x2018, "'",
                    0x2019, "'", 0x201c, "\"", 0x201d, "\"", 0x25a1, "[ ]");

    private static final int FIRST_BEYOND_ASCII = 0x80;

    private final CharsetEncoder encoder;
    private char high;

    ConsoleText(OutputStream out, Charset charset) {
        super(new OutputStreamWriter(out, charset));
        this.encoder = charset.newEncoder();
    }

    /** A writer for one of the process's streams. */
    static PrintWriter to(OutputStream stream) {
        return new PrintWriter(
                new ConsoleText(
                        stream,
                        charset(
                                System.getProperty("os.name"),
                                Optional.ofNullable(System.console()).map(Console::charset))),
                true);
    }

    /** Other systems' consoles show UTF-8, whatever the language set says. */
    static Charset charset(String system, Optional<Charset> console) {
        return system.startsWith("Windows")
                ? console.orElse(StandardCharsets.UTF_8)
                : StandardCharsets.UTF_8;
    }

    @Override
    public void write(int letter) throws IOException {
        char unit = (char) letter;
        if (Character.isHighSurrogate(unit)) {
            high = unit;
        } else if (Character.isLowSurrogate(unit)) {
            out.write(shown(Character.toCodePoint(high, unit)));
        } else {
            out.write(shown(unit));
        }
    }

    /** Whether every code page has all of the letters; to ask it of each takes long. */
    private static boolean isPlain(char[] letters, int from, int length) {
        for (int i = from; i < from + length; i++) {
            if (letters[i] >= FIRST_BEYOND_ASCII) {
                return false;
            }
        }
        return true;
    }

    @Override
    public void write(char[] letters, int from, int length) throws IOException {
        if (isPlain(letters, from, length)) {
            out.write(letters, from, length);
            return;
        }
        for (int i = from; i < from + length; i++) {
            write(letters[i]);
        }
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        write(text.toCharArray(), from, length);
    }

    private String shown(int codePoint) {
        String letter = Character.toString(codePoint);
        if (encoder.canEncode(letter)) {
            return letter;
        }
        String plain =
                PLAIN.getOrDefault(
                        codePoint,
                        Normalizer.normalize(letter, Normalizer.Form.NFKD)
                                .replaceAll("\\p{M}", ""));
        return encoder.canEncode(plain) ? plain : "?";
    }
}
