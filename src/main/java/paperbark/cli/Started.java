package paperbark.cli;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How the program was started, so that commands in messages can be pasted as they stand. */
final class Started {
    private static final boolean WINDOWS = System.getProperty("os.name").startsWith("Windows");

    private Started() {}

    /** The command that runs the program with the given words. */
    static String with(String... words) {
        return Stream.concat(program().stream(), Stream.of(words))
                .map(Started::quoted)
                .collect(Collectors.joining(" "));
    }

    private static List<String> program() {
        try {
            CodeSource source = Started.class.getProtectionDomain().getCodeSource();
            Path jar = Path.of(source.getLocation().toURI());
            if (Files.isRegularFile(jar)) {
                return List.of("java", "-jar", jar.toString());
            }
        } catch (URISyntaxException | InvalidPathException e) {
            // The name alone then tells enough.
            return List.of("paperbark");
        }
        return List.of("paperbark");
    }

    /** As a shell takes a word: Windows knows double quotation marks only. */
    static String quoted(String word) {
        if (word.matches("[\\p{L}\\p{N}_./:@%+=,\\\\-]+") && (WINDOWS || !word.contains("\\"))) {
            return word;
        }
        return WINDOWS ? '"' + word + '"' : "'" + word.replace("'", "'\\''") + "'";
    }
}
