package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A register or a pile on its way through the folder of work. */
class WorkItemTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Office.in(folder);
    }

    private Path drop(Path where, String name) throws IOException {
        return Files.writeString(where.resolve(name), name);
    }

    @Test
    void eachIsTakenIntoAFolderOfItsOwn() throws IOException {
        WorkItem first = WorkItem.take(office, drop(office.intake(), "week.csv"));
        WorkItem second = WorkItem.take(office, drop(office.intake(), "week.csv"));
        assertThat(Office.list(office.work())).containsExactly(first.folder(), second.folder());
        assertThat(first.folder().getFileName()).hasToString("0001");
        assertThat(second.folder().getFileName()).hasToString("0002");
        assertThat(first.source().orElseThrow()).hasContent("week.csv");
        assertThat(office.intake()).isEmptyDirectory();
        assertThat(first.isScan()).isFalse();
    }

    @Test
    void aPileGoesBackToTheScansAndARegisterToTheIntake() throws IOException {
        WorkItem pile = WorkItem.takeScan(office, drop(office.scans(), "pile.pdf"));
        WorkItem register = WorkItem.take(office, drop(office.intake(), "week.csv"));
        assertThat(pile.isScan()).isTrue();
        pile.putBack(office);
        register.putBack(office);
        assertThat(office.scans().resolve("pile.pdf")).exists();
        assertThat(office.intake().resolve("week.csv")).exists();
        assertThat(office.work()).isEmptyDirectory();
    }

    @Test
    void whatGoesBackTakesNobodysPlace() throws IOException {
        WorkItem item = WorkItem.take(office, drop(office.intake(), "week.csv"));
        drop(office.intake(), "week.csv");
        item.putBack(office);
        assertThat(Office.list(office.intake()))
                .extracting(f -> f.getFileName().toString())
                .hasSize(2)
                .contains("week.csv");
    }

    @Test
    void whatIsAmongTheThingsThatGoBackStaysForTheNextStart() throws IOException {
        WorkItem item = WorkItem.take(office, drop(office.intake(), "week.csv"));
        Files.createDirectory(item.returning());
        Files.delete(item.source().orElseThrow());
        item.putBack(office);
        assertThat(item.folder()).isDirectory();

        WorkItem gone = WorkItem.take(office, drop(office.intake(), "other.csv"));
        Files.delete(gone.source().orElseThrow());
        gone.putBack(office);
        assertThat(gone.folder()).doesNotExist();
    }

    @Test
    void failuresAreCountedOneByOne() throws IOException {
        WorkItem item = WorkItem.take(office, drop(office.intake(), "week.csv"));
        assertThat(item.faults()).isZero();
        item.countFault();
        item.countFault();
        assertThat(item.faults()).isEqualTo(2);
        assertThat(new WorkItem(item.folder()).faults()).isEqualTo(2);
    }
}
