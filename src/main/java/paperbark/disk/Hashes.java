package paperbark.disk;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;

/** SHA-256 in hexadecimal. */
public final class Hashes {
    private Hashes() {}

    /** Of these bytes. */
    public static String sha256(byte[] content) {
        return DigestUtils.sha256Hex(content);
    }

    /** Of what a file holds. */
    public static String sha256(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return DigestUtils.sha256Hex(in);
        }
    }

    /**
     * The hashes of all files of a folder by their path below it; of a single file under its name.
     */
    public static Map<String, String> ofAll(Path folderOrFile) throws IOException {
        Map<String, String> hashes = new TreeMap<>();
        if (Files.isRegularFile(folderOrFile)) {
            hashes.put(folderOrFile.getFileName().toString(), sha256(folderOrFile));
            return hashes;
        }
        // Links are followed, as whoever reads the files does; what editors leave beside them is
        // nobody's table or template.
        try (Stream<Path> files = Files.walk(folderOrFile, FileVisitOption.FOLLOW_LINKS)) {
            for (Path file :
                    files.filter(Files::isRegularFile).filter(f -> !isLeftover(f)).toList()) {
                hashes.put(
                        folderOrFile.relativize(file).toString().replace('\\', '/'), sha256(file));
            }
        }
        return hashes;
    }

    private static boolean isLeftover(Path file) {
        String name = file.getFileName().toString();
        return name.startsWith(".")
                || name.startsWith("~$")
                || name.endsWith(".tmp")
                || name.endsWith("~");
    }
}
