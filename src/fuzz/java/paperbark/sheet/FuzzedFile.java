package paperbark.sheet;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;

/** A file of fuzzed bytes, read as a register is. */
final class FuzzedFile {
    private FuzzedFile() {}

    /** A piece of work on a file. */
    interface Work {
        void on(Path file) throws IOException;
    }

    /** It is read, or refused with a reason. */
    static Reading<Sheet> readOrRefused(Path file) {
        Reading<Sheet> read = SheetReader.read(file, Books.KNOWN, Optional.empty());
        if (read.result().isEmpty() && read.findings().stream().noneMatch(Finding::stops)) {
            throw new AssertionError("neither read nor refused");
        }
        return read;
    }

    static void with(String ending, byte[] content, Work work) throws IOException {
        Path file = Files.createTempFile("fuzz-", ending);
        try {
            Files.write(file, content);
            work.on(file);
        } finally {
            Files.delete(file);
        }
    }

    /** Text in which each low byte stands for a word of the format, so that mark-up comes about. */
    static String spelled(byte[] content, List<String> words) {
        StringBuilder text = new StringBuilder();
        for (byte b : content) {
            int c = b & 0xFF;
            text.append(c < words.size() ? words.get(c) : Character.toString(c));
        }
        return text.toString();
    }
}
