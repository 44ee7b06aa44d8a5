package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import paperbark.cli.ProgramProcess;

/** The program attending an office folder once, as a process of its own. */
final class Child {
    private Child() {}

    /**
     * Starts it.
     *
     * @param said takes what it says
     * @param properties system properties such as {@code paperbark.fault=STAGED}
     */
    static Process watch(Office office, Path said, String... properties) throws IOException {
        return start(
                List.of("watch", office.root().toString(), "--once", "--quiet-for", "0"),
                said,
                properties);
    }

    /** Starts the program with other words. */
    static Process start(List<String> words, Path said, String... properties) throws IOException {
        List<String> command =
                new ArrayList<>(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:TieredStopAtLevel=1",
                                "-Xshare:auto",
                                "-Xmx512m"));
        for (String property : properties) {
            command.add("-D" + property);
        }
        command.addAll(
                List.of(
                        "-cp",
                        System.getProperty(
                                "surefire.test.class.path", System.getProperty("java.class.path")),
                        ProgramProcess.class.getName()));
        command.addAll(words);
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
