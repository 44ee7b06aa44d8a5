package paperbark.outside;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * Runs another program. Where it is not installed the test is skipped with a message, unless the
 * environment says {@code CI=true}: there it fails, so that no check is lost unseen.
 */
public final class Outside {
    private static final Duration LONGEST = Duration.ofMinutes(2);

    /**
     * What came of it.
     *
     * @param exitCode zero for success
     * @param out what it printed
     * @param err what it complained of
     */
    public record Result(int exitCode, String out, String err) {}

    private Outside() {}

    /** Skips the test, or fails it in CI, where the program is missing. */
    public static void needs(String program) {
        boolean found =
                Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
        if (!found && "true".equals(System.getenv("CI"))) {
            throw new AssertionError(program + " is missing; every outside reader is needed in CI");
        }
        Assumptions.assumeTrue(found, program + " is not installed; install it to run this test");
    }

    /** Runs the program in the folder, with its home and temporary files there too. */
    public static Result run(Path folder, String program, String... arguments) {
        needs(Path.of(program).getFileName().toString());
        List<String> command = new ArrayList<>(List.of(program));
        command.addAll(List.of(arguments));
        try {
            Path out = Files.createTempFile(folder, "said", ".out");
            Path err = Files.createTempFile(folder, "said", ".err");
            ProcessBuilder builder =
                    new ProcessBuilder(command)
                            .directory(folder.toFile())
                            .redirectOutput(out.toFile())
                            .redirectError(err.toFile());
            builder.environment().put("HOME", folder.toString());
            builder.environment().put("TMPDIR", folder.toString());
            Process process = builder.start();
            if (!process.waitFor(LONGEST.toSeconds(), TimeUnit.SECONDS)) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
                throw new AssertionError(program + " did not end within " + LONGEST);
            }
            return new Result(process.exitValue(), read(out), read(err));
        } catch (IOException e) {
            throw new AssertionError(program + " could not be started", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(program + " was interrupted", e);
        }
    }

    private static String read(Path file) throws IOException {
        return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    }
}
