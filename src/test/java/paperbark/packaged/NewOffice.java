package paperbark.packaged;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Stream;
import paperbark.outside.Outside;

/** The office folder of somebody who has the program since today, with its start and its stop. */
final class NewOffice {
    private static final Duration LONGEST = Duration.ofMinutes(2);

    private final Path home;
    private final Path launcher;
    private Process attending;

    NewOffice(Path home, Path launcher) {
        this.home = home;
        this.launcher = launcher;
    }

    Path folder(String name) {
        return home.resolve("office").resolve(name);
    }

    private Map<String, String> environment() {
        return Map.of("PATH", System.getenv("PATH"), "HOME", home.toString(), "TERM", "dumb");
    }

    /** Types a command into a command window and answers its questions. */
    Outside.Result talk(String words, List<Map.Entry<String, String>> answers) throws Exception {
        return Console.talk(home, "'" + launcher + "' " + words, environment(), answers);
    }

    /** The same of one that asks nothing. */
    Outside.Result command(String words) throws Exception {
        return talk(words, List.of());
    }

    /** A double-click on the start. */
    void start() throws Exception {
        attending = script("start.sh", home.resolve("attending.txt"));
        await(folder("status.html"), Files::exists);
    }

    /** A double-click on the stop. */
    Outside.Result stop() throws Exception {
        Process stop = script("stop.sh", home.resolve("stopping.txt"));
        if (!stop.waitFor(LONGEST.toSeconds(), TimeUnit.SECONDS)
                || !attending.waitFor(LONGEST.toSeconds(), TimeUnit.SECONDS)) {
            throw new AssertionError("it goes on");
        }
        return new Outside.Result(
                attending.exitValue(), Files.readString(home.resolve("attending.txt")), "");
    }

    private Process script(String name, Path out) throws IOException {
        ProcessBuilder builder =
                new ProcessBuilder("sh", "-c", "exec \"$0\"", folder(name).toString())
                        .directory(home.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(out.toFile());
        builder.environment().clear();
        builder.environment().putAll(environment());
        return builder.start();
    }

    /** Whatever became of the test, nobody attends the folder after it. */
    void kill() throws InterruptedException {
        if (attending != null) {
            attending.destroyForcibly().waitFor();
        }
    }

    /** Puts a copy of a file into the intake. */
    void drop(Path file) throws IOException {
        Files.copy(
                file,
                folder("intake").resolve(file.getFileName().toString()),
                StandardCopyOption.REPLACE_EXISTING);
    }

    /** The folder of the only register that went back, once it is there. */
    Path returned() throws Exception {
        return await(folder("returned"), all -> seen(all).size() == 1, 1);
    }

    /** The folder of the batch of that number, once it is there. */
    Path batch(int number) throws Exception {
        return await(folder("packs"), all -> seen(all).size() == number, number);
    }

    private Path await(Path folder, Predicate<Path> done, int number) throws Exception {
        await(folder, done);
        return seen(folder).get(number - 1);
    }

    private void await(Path file, Predicate<Path> done) throws Exception {
        Instant end = Instant.now().plus(LONGEST);
        while (!done.test(file)) {
            if (Instant.now().isAfter(end) || !attending.isAlive()) {
                throw new AssertionError(
                        file
                                + " does not come; said was "
                                + Files.readString(home.resolve("attending.txt")));
            }
            Thread.sleep(300);
        }
    }

    /** What a person sees in a folder; names that count upwards are in order. */
    private static List<Path> seen(Path folder) {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> !f.getFileName().toString().startsWith(".")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
