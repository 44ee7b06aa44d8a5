package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import paperbark.cli.ProgramProcess;

/**
 * Processes of their own. They live for seconds, so their code is compiled once and quickly and one
 * thread collects garbage, which halves what they cost.
 */
final class Child {
    private Child() {}

    /**
     * Starts the program attending an office folder once.
     *
     * @param said takes what it says
     * @param properties system properties such as {@code paperbark.fault=STAGED}
     */
    static Process watch(Office office, Path said, String... properties) throws IOException {
        return program(List.of(watching(office)), said, properties);
    }

    private static String[] watching(Office office) {
        return new String[] {"watch", office.root().toString(), "--once", "--quiet-for", "0"};
    }

    private static String classPath() {
        return System.getProperty(
                "surefire.test.class.path", System.getProperty("java.class.path"));
    }

    /** The same without a promise that the program makes. */
    static Process watch(Weakened without, Office office, Path said, String... properties)
            throws IOException {
        Path changed = said.resolveSibling(without.name());
        return start(
                without.before(classPath(), changed),
                said,
                List.of(properties),
                ProgramProcess.class,
                watching(office));
    }

    /** Starts the program with other words. */
    static Process program(List<String> words, Path said, String... properties) throws IOException {
        return start(said, List.of(properties), ProgramProcess.class, words.toArray(String[]::new));
    }

    /** Starts a main class with the class path of the tests. */
    static Process start(Path said, List<String> properties, Class<?> main, String... words)
            throws IOException {
        return start(classPath(), said, properties, main, words);
    }

    private static Process start(
            String classPath, Path said, List<String> properties, Class<?> main, String... words)
            throws IOException {
        List<String> command =
                new ArrayList<>(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:TieredStopAtLevel=1",
                                "-XX:+UseSerialGC",
                                "-Xmx512m"));
        properties.forEach(property -> command.add("-D" + property));
        command.addAll(List.of("-cp", classPath, main.getName()));
        command.addAll(List.of(words));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
    }

    /** Waits for its end and tells its exit code. */
    static int end(Process process) throws InterruptedException {
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        return process.exitValue();
    }
}
