package paperbark.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The archive of loaded classes that the launcher hands to Java, so that a command starts faster.
 * It fits one Java and one jar at one place; Java leaves any other alone, so that an old one costs
 * nothing but time.
 *
 * @param file the archive, beside the jar
 * @param jar the program, as the launcher names it: the archive is tied to these letters
 */
public record StartArchive(Path file, String jar) {
    private static final String NAME = "paperbark.jsa";
    private static final int LONGEST_MINUTES = 5;

    /** The archive of a program that lies unpacked in a folder. */
    public static StartArchive of(Path home, String jar) {
        return new StartArchive(home.resolve("lib").resolve(NAME), jar);
    }

    /** Whether it is there, made for the Java that runs now and for the jar as it is. */
    public boolean isFit() throws IOException {
        return Files.exists(file)
                && Files.exists(note())
                && Files.readString(note()).equals(fits());
    }

    /** Whether it can be made where it belongs. */
    public boolean isPossible() {
        return Files.isWritable(file.getParent());
    }

    /**
     * Makes it anew of what a walk through the program needs.
     *
     * @param files what the walk finds in its folder, by name
     * @param walk the words that the program is started with for it
     * @throws IOException when it cannot be made; the one before is then gone or as it was
     */
    public void make(Map<String, byte[]> files, List<String> walk) throws IOException {
        Path folder = Files.createTempDirectory("paperbark-start");
        Path part = file.resolveSibling("." + NAME + ".part");
        try {
            for (Map.Entry<String, byte[]> each : files.entrySet()) {
                Path to = folder.resolve(each.getKey());
                Files.createDirectories(to.getParent());
                Files.write(to, each.getValue());
            }
            Files.deleteIfExists(part);
            write(folder, part, walk);
            Files.deleteIfExists(note());
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
            Files.writeString(note(), fits());
        } finally {
            Files.deleteIfExists(part);
            Disk.delete(folder);
        }
    }

    /**
     * Two processes: the first walks through the program and notes the classes, the second writes
     * them. An archive written at the end of a walk would lack what libraries for old versions of
     * Java bring, the reader of the command line among them.
     */
    private void write(Path folder, Path part, List<String> walk) throws IOException {
        Path classes = folder.resolve("classes");
        List<String> noting =
                new ArrayList<>(List.of("-XX:+UseSerialGC", "-XX:DumpLoadedClassList=" + classes));
        noting.addAll(List.of("-Djava.awt.headless=true", "-jar", jar));
        noting.addAll(walk);
        run(folder, noting, classes);
        // Only this collector's memory can be archived; others can read it.
        List<String> writing = new ArrayList<>(List.of("-XX:+UseG1GC", "-Xshare:dump"));
        writing.add("-XX:SharedClassListFile=" + classes);
        writing.add("-XX:SharedArchiveFile=" + part);
        writing.addAll(List.of("-jar", jar));
        run(folder, writing, part);
    }

    private static void run(Path folder, List<String> words, Path made) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-Xlog:disable"));
        command.addAll(words);
        Process process =
                new ProcessBuilder(command)
                        .directory(folder.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(folder.resolve("said").toFile())
                        .start();
        Thread atTheEnd = new Thread(process::destroyForcibly, "start archive");
        Runtime.getRuntime().addShutdownHook(atTheEnd);
        try {
            boolean ended = process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES);
            if (!ended || process.exitValue() != 0 || !Files.exists(made)) {
                throw new IOException(
                        "The archive for faster starts could not be made: "
                                + Files.readString(folder.resolve("said")));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("It was interrupted.", e);
        } finally {
            process.destroyForcibly();
            Runtime.getRuntime().removeShutdownHook(atTheEnd);
        }
    }

    private Path note() {
        return file.resolveSibling(NAME + ".txt");
    }

    private String fits() throws IOException {
        Path program = Path.of(jar);
        return String.join(
                "\n",
                "For faster starts with:",
                System.getProperty("java.vm.version"),
                jar,
                Files.size(program) + " bytes",
                Hashes.sha256(program));
    }
}
