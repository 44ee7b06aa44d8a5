package paperbark.cli;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How the program was started, so that commands in messages can be pasted as they stand. */
final class Started {
    private static final String LAUNCHER = "paperbark.launcher";
    private static final String HOME = "paperbark.home";
    private static final boolean WINDOWS = System.getProperty("os.name").startsWith("Windows");

    private Started() {}

    /** The command that runs the program with the given words. */
    static String with(String... words) {
        return Stream.concat(program().stream(), Stream.of(words))
                .map(Started::quoted)
                .collect(Collectors.joining(" "));
    }

    /** The launcher that started the program, where one did. */
    static Optional<Path> launcher() {
        return Optional.ofNullable(System.getProperty(LAUNCHER)).map(Path::of);
    }

    /** The folder that the program lies in unpacked, where a launcher started it. */
    static Optional<Path> home() {
        return Optional.ofNullable(System.getProperty(HOME)).map(Path::of).map(Path::normalize);
    }

    /**
     * The words that run the program from anywhere, the first of them a whole path; empty when it
     * runs from classes.
     */
    static Optional<List<String>> fromAnywhere() {
        if (launcher().isPresent()) {
            return Optional.of(List.of(launcher().get().toString()));
        }
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return jar().map(jar -> List.of(java, "-jar", jar.toString()));
    }

    private static List<String> program() {
        if (launcher().isPresent()) {
            return List.of(launcher().get().toString());
        }
        return jar().map(jar -> List.of("java", "-jar", jar.toString()))
                .orElse(List.of("paperbark"));
    }

    private static Optional<Path> jar() {
        try {
            CodeSource source = Started.class.getProtectionDomain().getCodeSource();
            return Optional.of(Path.of(source.getLocation().toURI())).filter(Files::isRegularFile);
        } catch (URISyntaxException | InvalidPathException e) {
            // The name alone then tells enough.
            return Optional.empty();
        }
    }

    /** As a shell takes a word: Windows knows double quotation marks only. */
    static String quoted(String word) {
        if (word.matches("[\\p{L}\\p{N}_./:@%+=,\\\\-]+") && (WINDOWS || !word.contains("\\"))) {
            return word;
        }
        return WINDOWS ? '"' + word + '"' : "'" + word.replace("'", "'\\''") + "'";
    }
}
