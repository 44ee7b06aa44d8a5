package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Ending;
import paperbark.ledger.LedgerException;

class AttendantTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    @TempDir private Path folder;

    private Office office;
    private Instant now = Instant.parse("2026-11-23T01:00:00Z");
    private final List<String> told = new ArrayList<>();
    private final List<String> dropped = new ArrayList<>();

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private Path drop(String name, String content) throws IOException {
        Path file = Files.writeString(office.intake().resolve(name), content);
        Files.setLastModifiedTime(file, FileTime.from(now.minusSeconds(60)));
        dropped.add(Invariants.sha256(file));
        return file;
    }

    /** Two looks far enough apart, as a new process. */
    private List<Ending> attend() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            List<Ending> endings = new ArrayList<>(attendant.round().endings());
            now = now.plusSeconds(11);
            endings.addAll(attendant.round().endings());
            Invariants.hold(office.root(), dropped);
            return endings;
        }
    }

    private Attendant.World world() {
        return new Attendant.World(
                () -> now, () -> TODAY, Duration.ofSeconds(10), 30, "test", told::add);
    }

    @Test
    void aRegisterBecomesPacksAndIsFiledAsItCame() throws Exception {
        drop("week.csv", Offices.register(1));
        assertThat(attend()).containsExactly(Ending.DONE);
        assertThat(office.packs().resolve("2026-11-23-week/packs/J-1.pdf")).isRegularFile();
        assertThat(office.filed().resolve("2026/2026-11-23-week/week.csv"))
                .hasContent(Offices.register(1));
        Invariants.atRest(office.root(), 1);
        assertThat(Files.readString(office.status()))
                .contains("2026-11-23-week", "Nothing is being worked on");
    }

    @Test
    void aTableThatIsChangedShowsInTheCalendarAtTheNextLook() throws Exception {
        Path people = office.tables().resolve("people.csv");
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            attendant.round();
            byte[] before = Files.readAllBytes(office.calendar());
            attendant.round();
            assertThat(office.calendar()).hasBinaryContent(before);
            Files.writeString(
                    people,
                    Files.readString(people)
                            .replaceFirst("2024-07-01,2027-06-30", "2024-07-01,2026-12-31"));
            attendant.round();
            assertThat(Files.readString(office.calendar())).contains("DTSTART;VALUE=DATE:20261231");
        }
    }

    @Test
    void theSameBytesAgainPointToTheEarlierBatch() throws Exception {
        drop("week.csv", Offices.register(1));
        attend();
        drop("same.csv", Offices.register(1));
        assertThat(attend()).containsExactly(Ending.ALREADY);
        assertThat(told.get(1)).contains("same.csv", "packs/2026-11-23-week");
        Invariants.atRest(office.root(), 1);
    }

    @Test
    void otherBytesWithTheSameJobsAreNotSaidToBeUnderTheSameTables() throws Exception {
        drop("week.csv", Offices.register(1));
        attend();
        Files.writeString(office.tables().resolve("sellers.csv"), "\n", StandardOpenOption.APPEND);
        drop("later.csv", Offices.register(1) + "\n");
        assertThat(attend()).containsExactly(Ending.ALREADY);
        assertThat(told.get(1))
                .startsWith("later.csv: Nothing in this register is new")
                .doesNotContain("tables");
    }

    @Test
    void aListWithOneMoreJobBringsOnlyThatOne() throws Exception {
        drop("week.csv", Offices.register(1));
        attend();
        drop("more.csv", Offices.register(1, 2));
        assertThat(attend()).containsExactly(Ending.DONE);
        assertThat(Invariants.files(office.packs().resolve("2026-11-23-more/packs")))
                .extracting(f -> f.getFileName().toString())
                .containsExactly("J-2.pdf");
        Invariants.atRest(office.root(), 2);
    }

    @Test
    void aHeldJobWaitsForAPersonUntilALaterListMendsIt() throws Exception {
        drop("week.csv", Offices.register(1).replace("D270-A", "D270A"));
        assertThat(attend()).containsExactly(Ending.HELD);
        assertThat(Files.readString(office.status())).contains("1 job still held");
        drop("mended.csv", Offices.register(1));
        assertThat(attend()).containsExactly(Ending.DONE);
        assertThat(Files.readString(office.status())).doesNotContain("still held.");
        Invariants.atRest(office.root(), 1);
    }

    @Test
    void aListWithUnknownHeadingsGoesBackWithAProposal() throws Exception {
        drop(
                "own.csv",
                "Ref,How far,Client name,Brand,Unit,P/Code,Xyzzy\n"
                        + "PL-1,booked,Nora Nettle,Dunlin,D270-A,3342,3 Saucepan Court\n"
                        + "PL-2,booked,Otto Oakum,Dunlin,D200-A,3345,5 Teaspoon Lane\n");
        assertThat(attend()).containsExactly(Ending.REFUSED);
        Path returned = office.returned().resolve("2026-11-23-own");
        assertThat(returned.resolve("columns-proposed.csv"))
                .content()
                .contains("field,alias,always,how sure,because")
                .contains("model,Unit,,")
                .contains("site-postcode,P/Code,,")
                .contains("site-street,Xyzzy,,look,");
        assertThat(Files.readString(returned.resolve("WHAT-TO-DO.txt")))
                .contains("columns-proposed.csv says which column is probably which")
                .contains("take out each row with \"look\" that is wrong");
    }

    @Test
    void aRegisterThatCannotBeUsedGoesBackWithANote() throws Exception {
        drop("notes.csv", "Job,Owner,Model\nJ-1,Ada Amberwood,D270-A\n");
        drop("bundle.zip", "PK not really");
        drop("week.csv", Offices.register(1));
        assertThat(attend()).containsExactlyInAnyOrder(Ending.REFUSED, Ending.REFUSED, Ending.DONE);
        Path returned = office.returned().resolve("2026-11-23-notes");
        assertThat(returned.resolve("notes.csv")).exists();
        assertThat(returned.resolve("notes-checked.xlsx")).exists();
        assertThat(returned.resolve("WHAT-TO-DO.txt"))
                .content()
                .contains(
                        "could not be used",
                        "What to do:",
                        "drop the file into the intake folder again");
        assertThat(office.returned().resolve("2026-11-23-bundle/WHAT-TO-DO.txt")).exists();
        assertThat(Files.readString(office.status())).contains("2026-11-23-notes");
    }

    @Test
    void aFileThatGrowsIsLeftUntilItRests() throws Exception {
        Path file = drop("week.csv", "Job,Owner\n");
        dropped.clear();
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            for (int i = 0; i < 3; i++) {
                assertThat(attendant.round().waiting()).hasSize(1);
                now = now.plusSeconds(11);
                Files.writeString(file, Offices.register(1).substring(0, 200 + i));
                Files.setLastModifiedTime(file, FileTime.from(now));
            }
            Files.writeString(file, Offices.register(1));
            Files.setLastModifiedTime(file, FileTime.from(now));
            attendant.round();
            now = now.plusSeconds(9);
            assertThat(attendant.round().endings()).isEmpty();
            now = now.plusSeconds(2);
            assertThat(attendant.round().endings()).containsExactly(Ending.DONE);
        }
    }

    @Test
    void whatBelongsToOtherProgramsIsNeverTouched() throws Exception {
        for (String name :
                List.of(
                        "~$week.xlsx",
                        ".~lock.week.csv#",
                        "x.tmp",
                        "x.part",
                        "x.crdownload",
                        "Thumbs.db",
                        "A1B2C3D4")) {
            Files.writeString(office.intake().resolve(name), "x");
        }
        Files.createDirectory(office.intake().resolve("folder"));
        Files.createSymbolicLink(
                office.intake().resolve("link.csv"), folder.resolve("elsewhere.csv"));
        List<Path> before = Invariants.files(office.intake());
        assertThat(attend()).isEmpty();
        assertThat(Invariants.files(office.intake())).isEqualTo(before);
        assertThat(office.intake().resolve("link.csv")).isSymbolicLink();
        assertThat(Files.readString(office.status()))
                .contains("no file but a folder, link or device");
    }

    @Test
    void aRegisterThatIsOpenWaits() throws Exception {
        drop("week.csv", Offices.register(1));
        Path open = Files.writeString(office.intake().resolve("~$week.csv"), "x");
        assertThat(attend()).isEmpty();
        Files.delete(open);
        assertThat(attend()).containsExactly(Ending.DONE);
    }

    @Test
    void twoProgramsNeverAttendOneFolder() throws Exception {
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            assertThat(lock.office()).isEqualTo(office);
            assertThatThrownBy(() -> OfficeLock.take(office, now))
                    .isInstanceOf(OfficeLock.Busy.class)
                    .hasMessageContaining("process " + ProcessHandle.current().pid());
        }
        OfficeLock.take(office, now).close();
    }

    @Test
    void aDamagedLedgerStopsEverythingAndIsLeftAsItIs() throws Exception {
        drop("week.csv", Offices.register(1));
        byte[] damaged = "not a database".getBytes(java.nio.charset.StandardCharsets.UTF_8);
        Files.write(office.ledgerFile(), damaged);
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant = new Attendant(lock, world());
            assertThatThrownBy(attendant::round).isInstanceOf(LedgerException.class);
        }
        assertThat(Files.readAllBytes(office.ledgerFile())).isEqualTo(damaged);
        assertThat(office.intake().resolve("week.csv")).exists();
    }

    @Test
    void aTableThatCannotBeUsedLeavesTheRegisterInTheIntake() throws Exception {
        drop("week.csv", Offices.register(1));
        Path firm = office.tables().resolve("firm.csv");
        String sound = Files.readString(firm);
        Files.writeString(firm, "nothing\n");
        assertThat(attend()).containsExactly(Ending.SETUP);
        assertThat(office.intake().resolve("week.csv")).exists();
        Files.writeString(firm, sound);
        assertThat(attend()).containsExactly(Ending.DONE);
    }

    @Test
    void aRegisterAtWhichTheProgramFailedThriceGoesBackUnread() throws Exception {
        Path file = drop("poison.csv", Offices.register(1));
        WorkItem item = WorkItem.take(office, file);
        for (int i = 0; i < Handling.MOST_FAULTS; i++) {
            item.countFault();
        }
        assertThat(attend()).containsExactly(Ending.REFUSED);
        assertThat(office.returned().resolve("2026-11-23-poison/WHAT-TO-DO.txt"))
                .content()
                .contains("the program failed 3 times");
    }

    @Test
    void eachDayTheLedgerIsCopiedAndACopyIsKeptForThirtyDays() throws Exception {
        Files.createDirectories(office.backups());
        for (int day = 1; day <= 31; day++) {
            Files.writeString(
                    office.backups().resolve("paperbark-2026-10-%02d.db".formatted(day)), "x");
        }
        // The clock alone deletes nothing; this file is of a later day than it.
        drop("week.csv", Offices.register(1));
        attend();
        assertThat(Invariants.files(office.backups())).hasSize(9);
        assertThat(office.backups().resolve("paperbark-2026-11-23.db")).isRegularFile();
        assertThat(office.backups().resolve("paperbark-2026-10-23.db")).doesNotExist();
        assertThat(office.backups().resolve("paperbark-2026-10-24.db")).exists();
    }

    @Test
    void eachDayIsCopiedWithoutANewStartAndTheLedgerProvedBefore() throws Exception {
        List<LocalDate> day = new ArrayList<>(List.of(TODAY));
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant =
                    new Attendant(
                            lock,
                            new Attendant.World(
                                    () -> now,
                                    () -> day.get(0),
                                    Duration.ZERO,
                                    30,
                                    "test",
                                    told::add));
            attendant.round();
            day.set(0, TODAY.plusDays(1));
            attendant.round();
            assertThat(Invariants.files(office.backups()))
                    .extracting(f -> f.getFileName().toString())
                    .containsExactly("paperbark-2026-11-23.db", "paperbark-2026-11-24.db");
            Files.writeString(
                    Offices.ledgerFile(office), "not a ledger at all, but long enough to be one");
            day.set(0, TODAY.plusDays(2));
            assertThatThrownBy(attendant::round).isInstanceOf(LedgerException.class);
        }
        assertThat(office.backups().resolve("paperbark-2026-11-25.db")).doesNotExist();
    }
}
