package paperbark.rules;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The shipped files with some of them changed, for tests of what the loader refuses. */
final class ChangedProgram {
    private final Map<String, Optional<String>> changed = new HashMap<>();

    /** A file with another text. */
    ChangedProgram with(String name, String text) {
        changed.put(name, Optional.of(text));
        return this;
    }

    /** A file with another text, and the checksum that belongs to it. */
    ChangedProgram withChecksummed(String name, String text) {
        String list =
                text(Checksums.NAME)
                        .replaceFirst(
                                "(?m)^" + name + ",.*$",
                                name
                                        + ","
                                        + RuleFiles.sha256(text.getBytes(StandardCharsets.UTF_8)));
        return with(name, text).with(Checksums.NAME, list);
    }

    /** Without a file. */
    ChangedProgram without(String name) {
        changed.put(name, Optional.empty());
        return this;
    }

    /** The text of a shipped file, unchanged. */
    static String text(String name) {
        return new String(RuleFiles.inProgram(name).orElseThrow(), StandardCharsets.UTF_8);
    }

    Rulebook load() {
        return new RulebookLoader(new RuleFiles(Optional.empty(), this::bytes)).load();
    }

    private Optional<byte[]> bytes(String name) {
        return changed.containsKey(name)
                ? changed.get(name).map(text -> text.getBytes(StandardCharsets.UTF_8))
                : RuleFiles.inProgram(name);
    }
}
