package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.tools.ToolProvider;

/**
 * The program with a promise broken, so that a test sees whether that is noticed: one class is
 * compiled anew without it, and comes first on the class path of a child.
 */
enum Weakened {
    /** The folder appears before the ledger's commit, and not after it. */
    PUBLISH_FIRST(
            "batch/Batch.java",
            "books\\.enter\\(staging\\);\\s+staging\\.publish\\(\\);",
            "staging.publish(); books.enter(staging);"),
    /** Nothing is forced to the disk. */
    NO_SYNC("disk/Disk.java", "channel\\.force\\(true\\);\\s+Trace\\.FORCE\\.of\\(path\\);", "");

    private static final Path SOURCES = Path.of("src/main/java/paperbark");

    private final String file;
    private final String promise;
    private final String broken;

    Weakened(String file, String promise, String broken) {
        this.file = file;
        this.promise = promise;
        this.broken = broken;
    }

    /** Compiles the class into a folder, and tells the class path that begins with it. */
    String before(String classPath, Path folder) throws IOException {
        String source = Files.readString(SOURCES.resolve(file));
        assertThat(source).containsPattern(promise);
        Path changed = Files.createDirectories(folder).resolve(Path.of(file).getFileName());
        Files.writeString(changed, source.replaceFirst(promise, broken));
        List<String> words =
                List.of(
                        "-proc:none",
                        "-cp",
                        classPath,
                        "-d",
                        folder.toString(),
                        changed.toString());
        assertThat(
                        ToolProvider.getSystemJavaCompiler()
                                .run(null, null, null, words.toArray(String[]::new)))
                .isZero();
        return folder + File.pathSeparator + classPath;
    }
}
