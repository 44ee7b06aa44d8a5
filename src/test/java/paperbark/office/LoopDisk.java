package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import paperbark.outside.Outside;

/**
 * A disk that is a file. What a file system on it has not written yet is not in the file, so that a
 * copy of the file is the disk as a cut of power leaves it.
 *
 * @param folder where everything about it lies
 * @param type of its file system
 */
record LoopDisk(Path folder, String type) {
    private static final long MEGABYTE = 1 << 20;

    /** A new, empty disk, mounted; without the right to do so the test is skipped. */
    static LoopDisk make(Path folder, String type) throws IOException {
        Assumptions.assumeTrue(
                "root".equals(System.getProperty("user.name")),
                "only root may mount a disk; run as root for this test");
        LoopDisk disk = new LoopDisk(Files.createDirectories(folder), type);
        try (RandomAccessFile file = new RandomAccessFile(disk.image().toFile(), "rw")) {
            // The least that each can be made with.
            file.setLength((type.equals("xfs") ? 320 : 128) * MEGABYTE);
        }
        Outside.Result made = Outside.run(folder, "mkfs." + type, "-q", disk.image().toString());
        assertThat(made.exitCode()).as(made.err()).isZero();
        Files.createDirectories(disk.root());
        Assumptions.assumeTrue(
                disk.mount(disk.image()),
                "no right to mount a disk; run as root on a machine with loop devices for this test");
        return disk;
    }

    private Path image() {
        return folder.resolve("disk.img");
    }

    /** Where it is mounted. */
    Path root() {
        return folder.resolve("disk");
    }

    /** Mounts this or a copy of it, in the same place. */
    boolean mount(Path file) {
        // Puts off as little as it may, so that what is never forced shows soon.
        String options = type.equals("xfs") ? "loop" : "loop,commit=1";
        return Outside.run(
                                folder,
                                "mount",
                                "-t",
                                type,
                                "-o",
                                options,
                                file.toString(),
                                root().toString())
                        .exitCode()
                == 0;
    }

    /** Writes everything, as a computer that stood still for a while has. */
    void settle() {
        assertThat(Outside.run(folder, "sync", "-f", root().toString()).exitCode()).isZero();
    }

    /** The disk as a cut of power at this moment leaves it. */
    Path cut(String name) {
        Path copy = folder.resolve(name + ".img");
        Outside.Result copied =
                Outside.run(folder, "cp", "--sparse=always", image().toString(), copy.toString());
        assertThat(copied.exitCode()).as(copied.err()).isZero();
        return copy;
    }

    /** Takes it off; not being able to leaves it to the end of whoever uses it. */
    void unmount() {
        for (List<String> words :
                List.of(List.of(root().toString()), List.of("-l", root().toString()))) {
            if (Outside.run(folder, "umount", words.toArray(String[]::new)).exitCode() == 0) {
                return;
            }
        }
    }
}
