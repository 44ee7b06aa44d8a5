package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.ledger.LedgerException;
import paperbark.office.Attendant;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import paperbark.office.Offices;
import paperbark.outside.Outside;

/** The office folder in a world that is in trouble, look after look. */
class WatchTest {
    private static final String OVER = "The trouble is over";

    @TempDir private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private Instant now = Instant.parse("2026-11-23T01:00:00Z");
    private Office office;
    private OfficeLock lock;
    private Watch watch;

    @BeforeEach
    void begin() throws Exception {
        office = Offices.make(folder.resolve("office"));
        lock = OfficeLock.take(office, now);
        Main.World world =
                new Main.World(
                        new PrintWriter(out),
                        new PrintWriter(err),
                        Clock.systemUTC(),
                        folder,
                        false,
                        temporary -> {});
        watch =
                new Watch(
                        world,
                        new Attendant(
                                lock,
                                new Attendant.World(
                                        () -> now,
                                        () -> LocalDate.of(2026, 11, 23),
                                        Duration.ofSeconds(10),
                                        30,
                                        "test",
                                        line -> out.write(line + "\n"))));
    }

    @AfterEach
    void end() throws IOException {
        lock.close();
    }

    private Path drop(String name, String content) throws IOException {
        Path file = Files.writeString(office.intake().resolve(name), content);
        Files.setLastModifiedTime(file, FileTime.from(now.minusSeconds(60)));
        return file;
    }

    private void looks(int times) throws Exception {
        for (int i = 0; i < times; i++) {
            watch.look();
            now = now.plusSeconds(11);
        }
    }

    private void said(int times, String words) {
        assertThat(out.toString().split(java.util.regex.Pattern.quote(words), -1))
                .as(out + "\n" + err)
                .hasSize(times + 1);
    }

    private String status() throws IOException {
        return Files.readString(office.status());
    }

    private boolean isFiled(String name) {
        return Files.exists(
                office.filed()
                        .resolve("2026/2026-11-23-" + name.replaceAll("\\..*", ""))
                        .resolve(name));
    }

    @Test
    void aFolderThatCannotBeWrittenIsToldOnceAndTriedUntilItCan() throws Exception {
        Path week = drop("week.csv", Offices.register(1));
        Files.delete(office.packs());
        Files.writeString(office.packs(), "in the way");
        looks(5);
        said(1, "Trouble: ");
        said(1, "Registers stay in intake");
        assertThat(week).exists();
        assertThat(office.work()).isEmptyDirectory();
        assertThat(status()).contains("<strong>Trouble:</strong>", "packs");
        Files.delete(office.packs());
        Files.createDirectory(office.packs());
        looks(3);
        said(1, OVER);
        said(1, "week.csv: All done. packs/2026-11-23-week");
        assertThat(isFiled("week.csv")).isTrue();
        assertThat(status()).doesNotContain("Trouble:");
    }

    @Test
    void aRegisterThatCannotBeGivenBackIsKeptUntilItCan() throws Exception {
        drop("short.csv", "Job,Owner,Model\nJ-9,Ada Amberwood,D270-A\n");
        drop("week.csv", Offices.register(1));
        Files.delete(office.returned());
        Files.writeString(office.returned(), "in the way");
        looks(4);
        said(1, "Trouble: ");
        assertThat(isFiled("week.csv")).as("keeps no other waiting").isTrue();
        Files.delete(office.returned());
        Files.createDirectory(office.returned());
        looks(2);
        assertThat(office.returned().resolve("2026-11-23-short/short.csv")).exists();
        assertThat(office.intake()).isEmptyDirectory();
        assertThat(office.work()).isEmptyDirectory();
        said(1, OVER);
    }

    @Test
    void aShareThatIsNotThereIsWaitedFor() throws Exception {
        looks(1);
        Path away = Files.move(office.root(), folder.resolve("away"));
        Files.createDirectory(office.root());
        looks(2);
        said(1, "Trouble: Not found: " + office.intake());
        assertThat(office.root().resolve("paperbark.db")).doesNotExist();
        Files.deleteIfExists(office.status());
        Files.delete(office.root());
        Files.move(away, office.root());
        drop("week.csv", Offices.register(1));
        looks(2);
        assertThat(isFiled("week.csv")).isTrue();
        said(1, OVER);
    }

    @Test
    void aLedgerThatAnotherProgramWritesInIsWaitedFor() throws Exception {
        Path week = drop("week.csv", Offices.register(1));
        looks(1);
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + office.ledger());
                Statement statement = other.createStatement()) {
            statement.execute("BEGIN EXCLUSIVE");
            looks(1);
            said(1, "Trouble: Another program is writing in the ledger. Wait until it has ended.");
            assertThat(week).exists();
            assertThat(status()).contains("Another program is writing");
            statement.execute("ROLLBACK");
        }
        looks(2);
        assertThat(isFiled("week.csv")).isTrue();
        said(1, OVER);
    }

    @Test
    void aTableThatCannotBeUsedIsToldOnceAChange() throws Exception {
        drop("week.csv", Offices.register(1));
        Path firm = office.tables().resolve("firm.csv");
        String sound = Files.readString(firm);
        Files.writeString(firm, "nothing\n");
        looks(5);
        said(1, "week.csv: The firm's tables");
        assertThat(status()).contains("Trouble:", "week.csv", "firm.csv");
        Files.writeString(firm, "");
        looks(3);
        said(2, "week.csv: The firm's tables");
        Path other = drop("other.csv", Offices.register(2));
        looks(2);
        assertThat(status()).contains("other.csv: The firm");
        Files.delete(other);
        looks(1);
        assertThat(status()).doesNotContain("other.csv");
        Files.writeString(firm, sound);
        looks(2);
        assertThat(isFiled("week.csv")).isTrue();
        assertThat(status()).doesNotContain("Trouble:");
    }

    @Test
    void aRuleTableThatCannotBeUsedCountsAgainstNoRegister() throws Exception {
        Path week = drop("week.csv", Offices.register(1));
        Path rule = office.root().resolve("tables/rules/veec/factors.csv");
        String sound = Files.readString(rule);
        Files.writeString(rule, sound + "x\n");
        looks(6);
        said(1, "Trouble: The rule tables cannot be used.");
        assertThat(week).exists();
        Files.writeString(rule, sound);
        looks(2);
        assertThat(isFiled("week.csv")).isTrue();
    }

    @Test
    void aFaultOfOursIsReportedOnceAndTheOthersGoOn() throws Exception {
        Path item = Files.createDirectories(office.work().resolve("0001/source"));
        Files.writeString(item.resolve("odd.csv"), Offices.register(2));
        Files.writeString(item.resolveSibling("faults"), "no number");
        drop("week.csv", Offices.register(1));
        looks(4);
        assertThat(isFiled("week.csv")).isTrue();
        assertThat(err.toString().split("Please report this", -1)).hasSize(2);
        assertThat(err.toString()).contains("NumberFormatException");
        assertThat(status()).contains("The program failed");
        assertThat(item.resolve("odd.csv")).exists();
    }

    @Test
    void aLedgerThatWasDamagedEndsIt() throws Exception {
        Path week = drop("week.csv", Offices.register(1));
        looks(1);
        Files.writeString(
                office.root().resolve("paperbark.db"),
                "not a ledger at all, but long enough to be one");
        assertThatThrownBy(() -> looks(2)).isInstanceOf(LedgerException.class);
        assertThat(week).exists();
    }

    @Test
    @Tag("outside")
    void aRegisterThatMayNotBeMovedKeepsNoOtherWaiting() throws Exception {
        Path stuck = drop("a.csv", Offices.register(1));
        drop("b.csv", Offices.register(2));
        Assumptions.assumeTrue(
                Outside.run(folder, "chattr", "+i", stuck.toString()).exitCode() == 0,
                "no right to protect a file; run as root for this test");
        try {
            looks(3);
            assertThat(isFiled("b.csv")).isTrue();
            said(1, "Trouble: ");
        } finally {
            Outside.run(folder, "chattr", "-i", stuck.toString());
        }
        looks(2);
        assertThat(isFiled("a.csv")).isTrue();
        said(1, OVER);
    }
}
