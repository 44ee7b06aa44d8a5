package paperbark.office;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The words that a command for the program is made of, written as each kind of file wants them.
 *
 * @param program the words that run the program, the first of them a whole path
 * @param office path of the office folder
 */
record StartWords(List<String> program, String office) {
    /** Keeps the words from being changed. */
    StartWords {
        program = List.copyOf(program);
    }

    /** The program's words with further ones. */
    List<String> with(String... more) {
        List<String> all = new ArrayList<>(program);
        all.addAll(List.of(more));
        return all;
    }

    /** For a shell. Source: POSIX.1-2017, Shell Command Language, 2.2.2 Single-Quotes. */
    static String shell(List<String> words) {
        return joined(words.stream().map(w -> "'" + w.replace("'", "'\\''") + "'"));
    }

    /**
     * For a Windows command file, where no name can hold a double quotation mark. Source: from
     * memory of how such files double a percent sign.
     */
    static String command(List<String> words) {
        return joined(words.stream().map(w -> '"' + w.replace("%", "%%") + '"'));
    }

    /**
     * For a unit of systemd, which replaces variables in all words but the first. Source: its
     * manual, systemd.service(5) under COMMAND LINES and systemd.unit(5) under SPECIFIERS.
     */
    static String unit(List<String> words) {
        return inUnit(words.get(0))
                + " "
                + joined(words.stream().skip(1).map(w -> inUnit(w).replace("$", "$$")));
    }

    private static String inUnit(String word) {
        String escaped = word.replace("\\", "\\\\").replace("\"", "\\\"").replace("%", "%%");
        return '"' + escaped + '"';
    }

    /**
     * For a desktop entry: quoted as the key {@code Exec} asks, then escaped as every string there.
     * Source: Desktop Entry Specification 1.5, "The Exec key" and "Possible value types".
     */
    static String entry(List<String> words) {
        return joined(
                words.stream()
                        .map(
                                w ->
                                        ('"' + w.replaceAll("([\"`$\\\\])", "\\\\$1") + '"')
                                                .replace("\\", "\\\\")
                                                .replace("%", "%%")));
    }

    /** For text within XML 1.0. */
    static String xml(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static String joined(Stream<String> words) {
        return words.collect(Collectors.joining(" "));
    }
}
