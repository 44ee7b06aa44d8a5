package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Ending;
import paperbark.disk.Disk;

/** What is said of tables, templates, rules and folders before a run needs them. */
class EquipmentTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    private void table(String name, String... rows) throws IOException {
        Path file = office.tables().resolve(name);
        String headings = Files.readAllLines(file).get(0);
        Files.writeString(file, headings + "\n" + String.join("\n", rows) + "\n");
    }

    @Test
    void theSampleFirmsTablesAreInOrderAndCounted() throws IOException {
        assertThat(Equipment.tables(office.tables())).isEmpty();
        table("makers.csv", Files.readAllLines(office.tables().resolve("makers.csv")).get(1));
        assertThat(Equipment.counts(office.tables()))
                .contains("6 people, 1 maker, ")
                .endsWith(" sellers, 3 buyers, 9 offers");
        Files.writeString(office.tables().resolve("firm.csv"), "nothing\n");
        assertThat(Equipment.counts(office.tables())).isEmpty();
        assertThat(Equipment.tables(office.tables())).anyMatch(line -> line.startsWith("firm.csv"));
    }

    @Test
    void aTableOfHeadingsThatNamesNoFieldIsNamed() throws IOException {
        Files.writeString(
                office.tables().resolve("columns.csv"),
                "no-such-field,Ref,\n",
                StandardOpenOption.APPEND);
        assertThat(Equipment.tables(office.tables()))
                .singleElement()
                .asString()
                .startsWith("columns.csv");
    }

    @Test
    void whatIsLeftOfTheSampleFirmIsNamed() throws IOException {
        Path firm = office.tables().resolve("firm.csv");
        String other =
                Files.readString(firm).replaceFirst("(?m)^name,.*$", "name,Another Heating Firm");
        Files.writeString(firm, other);
        assertThat(Equipment.tables(office.tables()))
                .singleElement()
                .asString()
                .startsWith("still hold what is the sample firm's: ");
    }

    @Test
    void papersAreThoseOfTemplatesAndOfFormsThatTheTablesName() throws IOException {
        assertThat(Equipment.papers(office.templates(), office.tables()))
                .contains("stc/default", "warranty/default")
                .allMatch(paper -> paper.matches("[a-z-]+/[A-Za-z0-9_-]+"));
        Path own = Files.createDirectories(office.root().resolve("templates/stc"));
        Files.writeString(own.resolve("gull.ftlh"), "<p>one</p>");
        Files.writeString(own.resolve("notes.txt"), "x");
        assertThat(Equipment.papers(office.templates(), office.tables()))
                .contains("stc/gull")
                .doesNotContain("stc/notes");
    }

    @Test
    void formsOfMakersAndBuyersCountAsPapersThoughNoTemplateHasTheirName() throws IOException {
        said("makers.csv", ",ternlight,\n", ",own-registration,\n");
        said("buyers.csv", ",kestrel,,", ",own-assignment,,");
        assertThat(Equipment.papers(office.templates(), office.tables()))
                .contains("warranty/own-registration", "stc/own-assignment");
    }

    private void said(String table, String before, String after) throws IOException {
        Path file = office.tables().resolve(table);
        String text = Files.readString(file);
        assertThat(text).contains(before);
        Files.writeString(file, text.replace(before, after));
    }

    @Test
    void aBrokenTemplateAndABrokenRuleTableAreNamed() throws IOException {
        assertThat(Equipment.templates(office.templates())).isEmpty();
        assertThat(Equipment.rules(office.rules())).isEmpty();
        Path own = Files.createDirectories(office.root().resolve("templates/stc"));
        Files.writeString(own.resolve("gull.ftlh"), "<#if x>");
        Files.writeString(own.resolve("gull.txt"), "<#if x>");
        assertThat(Equipment.templates(office.templates()))
                .singleElement()
                .asString()
                .startsWith("stc/gull.ftlh");
        Files.writeString(
                office.rules().orElseThrow().resolve("veec/factors.csv"),
                "x\n",
                StandardOpenOption.APPEND);
        assertThat(Equipment.rules(office.rules())).isNotEmpty();
    }

    @Test
    void papersAreTheFirmsOwnOnceOneDiffersFromWhatIsShipped() throws IOException {
        assertThat(Equipment.hasOwnPapers(Optional.empty())).isFalse();
        Path own = Files.createDirectories(office.root().resolve("templates/stc"));
        assertThat(Equipment.hasOwnPapers(office.templates())).isFalse();
        Path copy = own.resolve("default.ftlh");
        Files.copy(Path.of("templates/stc/default.ftlh"), copy);
        assertThat(Equipment.hasOwnPapers(office.templates())).isFalse();
        Files.writeString(copy, "\n", StandardOpenOption.APPEND);
        assertThat(Equipment.hasOwnPapers(office.templates())).isTrue();
        Files.delete(copy);
        Files.writeString(own.resolve("gull.ftlh"), "x");
        assertThat(Equipment.hasOwnPapers(office.templates())).isTrue();
    }

    @Test
    void theTypefaceCameAlong() {
        assertThat(Equipment.hasTypeface()).isTrue();
    }

    @Test
    void eachFolderIsLookedAtAndLeftAsItWas() throws IOException {
        FolderCheck check = new FolderCheck(office);
        assertThat(check.folders())
                .extracting(CheckResult::what)
                .containsExactly("office/", "intake/", "work/", "packs/", "returned/", "filed/");
        assertThat(check.folders()).allMatch(CheckResult::isWell);
        assertThat(check.oneFileSystem().isWell()).isTrue();
        assertThat(Office.list(office.intake())).isEmpty();
        assertThat(Office.list(office.filed())).isEmpty();
        assertThat(check.space().said()).matches("\\d+ MB free.*");

        Disk.delete(office.work());
        Disk.delete(office.filed());
        assertThat(check.folders())
                .filteredOn(c -> !c.isWell())
                .singleElement()
                .satisfies(
                        c -> {
                            assertThat(c.what()).isEqualTo("filed/");
                            assertThat(c.ending()).isEqualTo(Ending.SETUP);
                        });
    }

    @Test
    void whoMayReadIsToldOfTheOfficeAndOfWhateverDiffers() throws IOException {
        for (Path path : List.of(office.root(), office.intake(), office.work(), office.packs())) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwx------"));
        }
        for (Path path : List.of(office.returned(), office.filed())) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwx------"));
        }
        FolderCheck check = new FolderCheck(office);
        assertThat(check.readers())
                .extracting(CheckResult::said)
                .containsExactly("what is made here can be read by you alone");
        Files.setPosixFilePermissions(office.packs(), PosixFilePermissions.fromString("rwxr-xr-x"));
        assertThat(check.readers())
                .extracting(CheckResult::said)
                .hasSize(2)
                .last()
                .asString()
                .matches("packs/ can be read by .+ too");
    }

    @Test
    void whatAFirmSaysOfItselfIsJudgedFactByFact() {
        assertThat(NewFirm.trouble("abn", "99 000 000 000")).isEmpty();
        assertThat(NewFirm.trouble("abn", "99 000 000 001")).isPresent();
        NewFirm firm =
                new NewFirm(
                        Map.of("abn", "99 000 000 001"), List.of(), List.of("Dunlin"), List.of());
        assertThat(firm.troubles()).isNotEmpty();
        assertThat(firm.fact(firm.troubles().get(0))).contains("abn");
        assertThat(firm.tables())
                .extracting(t -> t.name() + " " + t.rows().size())
                .containsExactly("firm 1", "people 0", "makers 1", "buyers 0");
    }
}
