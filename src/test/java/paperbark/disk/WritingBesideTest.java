package paperbark.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WritingBesideTest {
    private static final int MANY = 100;

    @TempDir Path folder;

    @Test
    void allFilesAreThereOnceTheWritingHasEnded() throws IOException {
        try (Staging staging = Staging.of(folder.resolve("batch"))) {
            for (int i = 0; i < MANY; i++) {
                staging.beginToWrite("packs/" + i, bytes("pack " + i));
            }
            staging.endWriting();

            assertThat(staging.written()).hasSize(MANY);
            for (int i = 0; i < MANY; i++) {
                assertThat(staging.toPublish().resolve("packs/" + i)).hasContent("pack " + i);
            }
        }
    }

    @Test
    void aFileThatCannotBeWrittenIsToldOfAtTheEnd() throws IOException {
        try (Staging staging = Staging.of(folder.resolve("batch"))) {
            staging.write("packs", bytes("a file where a folder is wanted"));
            staging.beginToWrite("packs/1", bytes("pack"));

            assertThatIOException().isThrownBy(staging::endWriting);
            assertThat(staging.written()).containsOnlyKeys("packs");
        }
    }

    @Test
    void nothingIsBegunOnceAFileCouldNotBeWritten() {
        WritingBeside beside = new WritingBeside();
        Callable<Path> full =
                () -> {
                    throw new IOException("The disk is full.");
                };
        try {
            assertThatIOException()
                    .isThrownBy(
                            () -> {
                                for (int i = 0; i < 10 * MANY; i++) {
                                    beside.begin(full);
                                    Thread.sleep(10);
                                }
                            })
                    .withMessage("The disk is full.");
        } finally {
            beside.giveUp();
        }
    }

    @Test
    void nothingIsLeftWhereTheBatchIsGivenUp() throws IOException {
        try (Staging staging = Staging.of(folder.resolve("batch"))) {
            for (int i = 0; i < MANY; i++) {
                staging.beginToWrite("packs/" + i, bytes("pack " + i));
            }
        }
        try (var left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
