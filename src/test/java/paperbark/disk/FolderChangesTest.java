package paperbark.disk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Waiting for somebody to save, with notices of the file system and without. */
class FolderChangesTest {
    @TempDir private Path folder;

    private interface Change {
        void make() throws IOException;
    }

    private void isNoticed(FolderChanges changes, Change change) throws Exception {
        CompletableFuture<Void> noticed = new CompletableFuture<>();
        Thread waiting =
                new Thread(
                        () -> {
                            try {
                                changes.await();
                                noticed.complete(null);
                            } catch (IOException | InterruptedException e) {
                                noticed.completeExceptionally(e);
                            }
                        });
        waiting.start();
        Thread.sleep(150);
        assertThat(noticed).as("nothing happened yet").isNotDone();
        change.make();
        noticed.get(20, TimeUnit.SECONDS);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aFileMadeChangedOrDeletedIsNoticedInNewFoldersToo(boolean withNotices) throws Exception {
        try (FolderChanges changes = new FolderChanges(folder, withNotices)) {
            Path sub = folder.resolve("stc");
            isNoticed(
                    changes,
                    () -> {
                        Files.createDirectory(sub);
                        Files.writeString(sub.resolve("ours.ftlh"), "one");
                    });
            isNoticed(changes, () -> Files.writeString(sub.resolve("ours.ftlh"), "one, two"));
            isNoticed(changes, () -> Files.delete(sub.resolve("ours.ftlh")));
        }
    }

    @Test
    void whatChangedBeforeTheWaitCounts() throws Exception {
        try (FolderChanges changes = new FolderChanges(folder, true)) {
            Files.writeString(folder.resolve("a.css"), "a");
            changes.await();
        }
    }

    @Test
    void anInterruptionEndsTheWait() throws Exception {
        CompletableFuture<String> end = new CompletableFuture<>();
        Thread waiting =
                new Thread(
                        () -> {
                            try (FolderChanges changes = new FolderChanges(folder, false)) {
                                changes.await();
                                end.complete("a change");
                            } catch (InterruptedException e) {
                                end.complete("interrupted");
                            } catch (IOException e) {
                                end.completeExceptionally(e);
                            }
                        });
        waiting.start();
        Thread.sleep(100);
        waiting.interrupt();

        assertThat(end.get(20, TimeUnit.SECONDS)).isEqualTo("interrupted");
    }
}
