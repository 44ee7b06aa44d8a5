package paperbark.disk;

import java.io.IOException;
import java.io.InputStream;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLConnection;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The files that the program brings along: its templates and the sample firm's papers. */
public final class Shipped {
    /** The folder of templates. */
    public static final String TEMPLATES = "templates";

    /** The folder of the sample firm: a register and its tables. */
    public static final String SAMPLES = "samples";

    /** The folder of the manual's pages. */
    public static final String MANUAL = "manual";

    // A file of each folder by which it is found.
    private static final Map<String, String> FOUND_BY =
            Map.of(TEMPLATES, "paperbark.css", SAMPLES, "week-47.xlsx", MANUAL, "starting.html");

    /** The sample firm's register within its folder. */
    public static final String REGISTER = "week-47.xlsx";

    private Shipped() {}

    /** Every file below a folder by its path within it, with {@code /} between names. */
    public static SortedMap<String, byte[]> below(String folder) throws IOException {
        String known = "/" + folder + "/" + FOUND_BY.get(folder);
        URL url = Objects.requireNonNull(Shipped.class.getResource(known), known);
        URLConnection connection = url.openConnection();
        try {
            if (connection instanceof JarURLConnection jar) {
                Path file = Path.of(jar.getJarFileURL().toURI());
                try (FileSystem inside = FileSystems.newFileSystem(file, (ClassLoader) null)) {
                    return files(inside.getPath(folder));
                }
            }
            return files(Path.of(url.toURI()).getParent());
        } catch (URISyntaxException e) {
            throw new IOException("The program's own files cannot be read.", e);
        }
    }

    /** One file below a folder, without looking at the others; empty where there is none. */
    public static Optional<byte[]> one(String folder, String file) throws IOException {
        try (InputStream in = Shipped.class.getResourceAsStream("/" + folder + "/" + file)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        }
    }

    /** All files in a folder for temporary files, which the caller deletes. */
    public static Path unpacked(String folder) throws IOException {
        Path unpacked = Files.createTempDirectory("paperbark-" + folder);
        for (Map.Entry<String, byte[]> file : below(folder).entrySet()) {
            Path target = unpacked.resolve(file.getKey());
            Files.createDirectories(target.getParent());
            Files.write(target, file.getValue());
        }
        return unpacked;
    }

    private static SortedMap<String, byte[]> files(Path folder) throws IOException {
        SortedMap<String, byte[]> all = new TreeMap<>();
        try (Stream<Path> below = Files.walk(folder)) {
            List<Path> found = below.filter(Files::isRegularFile).toList();
            for (Path file : found) {
                all.put(
                        folder.relativize(file).toString().replace('\\', '/'),
                        Files.readAllBytes(file));
            }
        }
        return all;
    }
}
