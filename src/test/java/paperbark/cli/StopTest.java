package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import paperbark.office.Offices;

/** Whoever attends an office folder ends when asked, after the register that is at work. */
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class StopTest {
    @TempDir private Path folder;

    private CompletableFuture<Program.Run> watching(String... more) {
        String[] words = new String[more.length + 6];
        System.arraycopy(
                new String[] {"watch", "office", "--poll", "1", "--quiet-for", "0"},
                0,
                words,
                0,
                6);
        System.arraycopy(more, 0, words, 6, more.length);
        return CompletableFuture.supplyAsync(() -> Program.run(folder, words));
    }

    private void waitForStatus() throws InterruptedException {
        while (!Files.exists(folder.resolve("office/status.html"))) {
            Thread.sleep(50);
        }
    }

    @Test
    void stopEndsTheProgramThatAttendsTheFolder() throws Exception {
        Offices.make(folder.resolve("office"));
        CompletableFuture<Program.Run> watch = watching();
        waitForStatus();
        Program.Run stop = Program.run(folder, "stop", "office");

        assertThat(stop.exitCode()).isZero();
        assertThat(stop.out()).contains("Stopped.");
        Program.Run watched = watch.get();
        assertThat(watched.exitCode()).isZero();
        assertThat(watched.out()).contains("Stopped, as asked.");
        assertThat(folder.resolve("office/status.html"))
                .content()
                .contains("Nobody attends this folder.");
        assertThat(folder.resolve("office/.stop-asked")).doesNotExist();
    }

    @Test
    void whereNobodyAttendsItSaysSoAndTheNextOneIsNotStopped() throws Exception {
        Offices.make(folder.resolve("office"));
        Program.Run stop = Program.run(folder, "stop", "office");
        assertThat(stop.exitCode()).isZero();
        assertThat(stop.out()).contains("Nobody attends");

        Files.writeString(folder.resolve("office/.stop-asked"), "left by a run that was cut");
        CompletableFuture<Program.Run> watch = watching();
        waitForStatus();
        Thread.sleep(2500);
        assertThat(watch).isNotDone();
        Program.run(folder, "stop", "office");
        assertThat(watch.get().exitCode()).isZero();
    }

    @Test
    void oneThatIsAtWorkForLongerIsLeftToFinish() throws Exception {
        Path office = folder.resolve("office");
        var made = Offices.make(office);
        try (var lock =
                paperbark.office.OfficeLock.take(
                        made, java.time.Instant.parse("2026-11-23T12:00:00Z"))) {
            Program.Run stop = Program.run(folder, "stop", "office", "--wait", "1");
            assertThat(lock).isNotNull();
            assertThat(stop.exitCode()).isEqualTo(20);
            assertThat(stop.out()).contains("stops as soon as that is done");
            assertThat(office.resolve(".stop-asked")).exists();
        }
    }

    @Test
    void withoutADesktopTheAddressOfTheStatusPageIsSaid() throws Exception {
        Offices.make(folder.resolve("office"));
        CompletableFuture<Program.Run> watch = watching("--open");
        waitForStatus();
        Program.Run second = Program.run(folder, "watch", "office", "--open");
        Program.run(folder, "stop", "office");

        String address = folder.toRealPath().resolve("office/status.html").toUri().toString();
        assertThat(watch.get().out()).contains("Open " + address);
        assertThat(second.exitCode()).as("somebody attends it already").isEqualTo(20);
        assertThat(second.out()).contains("Open " + address);
    }
}
