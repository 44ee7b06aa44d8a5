package paperbark.packaged;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import paperbark.outside.Outside;

/** A copy of the packaged program, and ways to start it there. */
final class Unpacked {
    /** A name of a folder that many programs stumble over. */
    static final String ODD = "Büro für Heiß wasser's";

    private final Path folder;
    private final Path home;

    private Unpacked(Path folder, Path home) {
        this.folder = folder;
        this.home = home;
    }

    /**
     * The copy, with rights and times as they are.
     *
     * @param name of the folder it lies in
     */
    static Unpacked of(Path packaged, Path folder, String name) throws IOException {
        Path odd = Files.createDirectories(folder.resolve(name));
        Outside.Result copied =
                Outside.run(folder, "cp", "-a", packaged.toString(), odd.toString());
        if (copied.exitCode() != 0) {
            throw new IOException(copied.err());
        }
        return new Unpacked(folder, odd.resolve(packaged.getFileName()));
    }

    /** The same copy, started and heard in another folder. */
    Unpacked in(Path other) {
        return new Unpacked(other, home);
    }

    /** Where the build put the program. */
    static Path packaged() {
        return Path.of(System.getProperty("program.folder"));
    }

    Path home() {
        return home;
    }

    Path launcher() {
        return home.resolve("paperbark");
    }

    /** Starts the launcher with nothing in the environment but what is given. */
    Process start(Path launcher, Path directory, Map<String, String> environment, String... words)
            throws IOException {
        List<String> command = new ArrayList<>(List.of(launcher.toString()));
        command.addAll(List.of(words));
        ProcessBuilder builder =
                new ProcessBuilder(command)
                        .directory(directory.toFile())
                        .redirectOutput(folder.resolve("out").toFile())
                        .redirectError(folder.resolve("err").toFile());
        builder.environment().clear();
        builder.environment().put("PATH", System.getenv("PATH"));
        builder.environment().put("HOME", folder.toString());
        builder.environment().putAll(environment);
        return builder.start();
    }

    /** The same until it has ended. */
    Outside.Result run(
            Path launcher, Path directory, Map<String, String> environment, String... words)
            throws Exception {
        Process process = start(launcher, directory, environment, words);
        if (!process.waitFor(3, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new AssertionError("did not end: " + out());
        }
        return new Outside.Result(process.exitValue(), out(), read("err"));
    }

    /** The same in the folder of the copy's folder, in an environment with nothing set. */
    Outside.Result run(String... words) throws Exception {
        return run(launcher(), folder, Map.of(), words);
    }

    /** What the program last started said so far. */
    String out() throws IOException {
        return read("out");
    }

    private String read(String name) throws IOException {
        return new String(Files.readAllBytes(folder.resolve(name)), StandardCharsets.UTF_8);
    }
}
