package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;

/** A copy of the ledger a day, and which of the older ones go. */
class BackupsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
    }

    /** Copies of the days before today. */
    private void copies(int howMany) throws IOException {
        Files.createDirectories(office.backups());
        for (int day = 1; day <= howMany; day++) {
            Files.writeString(copy(TODAY.minusDays(day)), "x");
        }
    }

    private Path copy(LocalDate day) {
        return office.backups().resolve("paperbark-" + day + ".db");
    }

    private void daily(int days) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            Backups.daily(office, ledger, TODAY, days);
        }
    }

    private void broughtOn(LocalDate day) throws IOException {
        Path file = Files.writeString(office.filed().resolve("week.csv"), "Job\n");
        Files.setLastModifiedTime(file, FileTime.from(Instant.parse(day + "T01:00:00Z")));
    }

    @Test
    void theCopyOfADayIsMadeOnceAndCanBeOpened() throws IOException {
        daily(30);
        try (Ledger copy = Ledger.open(copy(TODAY))) {
            assertThat(copy.records().newestNumber()).isZero();
        }
        Files.writeString(copy(TODAY), "as it is");
        daily(30);
        assertThat(copy(TODAY)).hasContent("as it is");
        assertThat(Office.list(office.backups())).containsExactly(copy(TODAY));
    }

    @Test
    void copiesOlderThanSoManyDaysGo() throws IOException {
        copies(20);
        broughtOn(TODAY);
        daily(10);
        assertThat(copy(TODAY.minusDays(10))).exists();
        assertThat(copy(TODAY.minusDays(11))).doesNotExist();
        assertThat(Backups.newestFirst(office)).hasSize(11);
    }

    @Test
    void sevenStayHoweverOldTheyAre() throws IOException {
        copies(20);
        broughtOn(TODAY);
        daily(1);
        assertThat(Backups.newestFirst(office))
                .hasSize(Backups.ALWAYS_KEPT)
                .startsWith(copy(TODAY), copy(TODAY.minusDays(1)));
    }

    @Test
    void theClockAloneDeletesNothing() throws IOException {
        copies(20);
        daily(10);
        assertThat(Backups.newestFirst(office)).hasSize(21);
    }

    @Test
    void whatPeopleBroughtLastSaysWhichDayItIsAtMost() throws IOException {
        copies(20);
        broughtOn(TODAY.minusDays(5));
        daily(10);
        assertThat(copy(TODAY.minusDays(15))).exists();
        assertThat(copy(TODAY.minusDays(16))).doesNotExist();
    }

    @Test
    void ofWhatPeopleBroughtTheNewestCounts() throws IOException {
        copies(20);
        broughtOn(TODAY.minusDays(5));
        for (Path before : List.of(office.intake(), office.returned())) {
            Path old = Files.writeString(before.resolve("old.csv"), "Job\n");
            Files.setLastModifiedTime(old, FileTime.from(Instant.EPOCH));
        }
        daily(10);
        assertThat(copy(TODAY.minusDays(16))).doesNotExist();
    }

    @Test
    void withoutAnyFileTheNewestEntryIsAsked() throws IOException {
        copies(20);
        try (Ledger ledger = Ledger.open(office.ledger())) {
            Entries.enter(ledger, Entries.batch("one", Entries.job("SB-1")));
        }
        daily(10);
        assertThat(copy(TODAY.minusDays(11))).doesNotExist();
    }

    @Test
    void whatElseLiesThereIsNoCopy() throws IOException {
        copies(1);
        Files.writeString(office.backups().resolve("notes.txt"), "x");
        assertThat(Backups.newestFirst(office)).containsExactly(copy(TODAY.minusDays(1)));
    }

    @Test
    void aRenewedCopyTakesThePlaceOfAllOthers() throws IOException {
        copies(3);
        Files.writeString(copy(TODAY), "older");
        List<String> gone;
        try (Ledger ledger = Ledger.open(office.ledger())) {
            gone = new ArrayList<>(Backups.renew(office, ledger, TODAY));
        }
        assertThat(gone)
                .containsExactly(
                        "paperbark-2026-11-22.db",
                        "paperbark-2026-11-21.db",
                        "paperbark-2026-11-20.db");
        assertThat(Backups.newestFirst(office)).containsExactly(copy(TODAY));
        try (Ledger copy = Ledger.open(copy(TODAY))) {
            assertThat(copy.records().newestNumber()).isZero();
        }
    }
}
