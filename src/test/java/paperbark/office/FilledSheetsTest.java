package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.disk.Disk;
import paperbark.ledger.Ledger;
import paperbark.outside.Outside;

/** Site sheets that are filled in on a tablet and dropped into the folder of scans. */
class FilledSheetsTest {
    private static final Map<String, String> ON_SITE =
            Map.of(
                    "installed-date", "20/11/2026",
                    "tank-serial", "2610040004512101",
                    "plumbing-certificate", "DEMO-VP-9");

    private static final String HEADINGS =
            Offices.register(3).lines().findFirst().orElseThrow() + "\n";

    @TempDir private Path folder;
    private Office office;
    private Path batch;

    @BeforeEach
    void bookTwoJobs() throws IOException {
        office = Offices.make(folder.resolve("office"));
        FilledSheets.want(office);
        drop("week.csv", Offices.register(3) + FilledSheets.booked(1) + FilledSheets.booked(2));
        batch = office.packs().resolve("2026-11-23-week");
    }

    @Test
    void bookedJobsHaveASheetAndTheBatchTellsOfIt() throws IOException {
        assertThat(files(batch.resolve("fillable"))).containsExactly("J-1.pdf", "J-2.pdf");
        assertThat(Files.readString(batch.resolve("index.html")))
                .contains("<a href=\"fillable/J-1.pdf\">Site sheet to fill in")
                .doesNotContain("fillable/J-3.pdf");
        assertThat(Files.readString(batch.resolve("manifest.json")))
                .contains("\"fillable/J-2.pdf\"");
    }

    @Test
    void whatIsTypedOnSheetsInstallsTheirJobs() throws IOException {
        byte[] first = FilledSheets.filled(sheet("J-1"), "J-1", ON_SITE);
        byte[] second =
                FilledSheets.filled(
                        sheet("J-2"),
                        "J-2",
                        Map.of("installed-date", "19 Nov 2026", "tank-serial", "2610040004512102"));
        Files.write(office.scans().resolve("tablet 1.pdf"), first);
        Files.write(office.scans().resolve("tablet 2.pdf"), second);

        Program.Run run = watch();

        assertThat(run.out())
                .contains("tablet 1.pdf: 3 facts of job J-1 typed on its sheet")
                .contains("tablet 2.pdf: 2 facts of job J-2 typed on its sheet");
        Path installed = office.packs().resolve("2026-11-23-week-2");
        assertThat(files(installed.resolve("packs"))).containsExactly("J-1.pdf", "J-2.pdf");
        assertThat(installed.resolve("fillable")).as("nothing is booked any more").doesNotExist();
        assertThat(FilledSheets.text(installed.resolve("packs/J-1.pdf")))
                .contains("2610040004512101", "DEMO-VP-9", "20 Nov 2026");
        assertThat(FilledSheets.text(installed.resolve("packs/J-2.pdf")))
                .contains("2610040004512102", "19 Nov 2026");
        assertThat(office.filed().resolve("2026/scans/tablet 1.pdf")).hasBinaryContent(first);
        assertThat(office.filed().resolve("2026/scans/tablet 2.pdf")).hasBinaryContent(second);
        assertThat(office.intake()).isEmptyDirectory();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            assertThat(ledger.versions("J-1")).hasSize(2);
        }
        changedCellsAreMarked(installed.resolve("register-checked.xlsx"));

        Files.write(office.scans().resolve("tablet 1.pdf"), first);
        assertThat(watch().out()).contains("tablet 1.pdf: It was taken in before.");
        assertThat(files(office.filed().resolve("2026/scans"))).as("both as they came").hasSize(3);
    }

    private static void changedCellsAreMarked(Path register) throws IOException {
        try (InputStream in = Files.newInputStream(register);
                XSSFWorkbook book = new XSSFWorkbook(in)) {
            Cell stage = book.getSheetAt(0).getRow(2).getCell(1);
            Cell serial = book.getSheetAt(0).getRow(2).getCell(10);
            assertThat(stage.getStringCellValue()).isEqualTo("booked");
            for (Cell changed : new Cell[] {stage, serial}) {
                assertThat(changed.getCellStyle().getFillPattern())
                        .isEqualTo(FillPatternType.SOLID_FOREGROUND);
                assertThat(changed.getCellComment().getString().getString())
                        .contains("was typed afterwards");
            }
            assertThat(serial.getCellComment().getString().getString())
                    .contains("2610040004512101");
        }
    }

    @Test
    void aSheetOnWhichNothingIsTypedSaysSo() throws IOException {
        assertThat(returned(Files.readAllBytes(sheet("J-1"))))
                .contains("Nothing is typed in the fields of the sheet for job J-1.");
    }

    @Test
    void aDayThatIsNoneIsAFindingAtItsCell() throws IOException {
        byte[] wrong =
                FilledSheets.filled(
                        sheet("J-1"),
                        "J-1",
                        Map.of("installed-date", "31/11/2026", "tank-serial", "2610040004512101"));
        Files.write(office.scans().resolve("tablet.pdf"), wrong);
        watch();

        Path again = office.packs().resolve("2026-11-23-week-2");
        assertThat(Files.readString(again.resolve("index.html")))
                .contains("31/11/2026")
                .contains("C3 &quot;Installed on&quot;");
        assertThat(FilledSheets.text(again.resolve("packs/J-1.pdf"))).contains("2610040004512101");
    }

    @Test
    void whatTheRegisterSaysAlreadyIsNotReplaced() throws IOException {
        String known = FilledSheets.booked(4).replace("D270-A,,", "D270-A,2610040004512104,");
        drop("more.csv", HEADINGS + known);
        Path sheet = office.packs().resolve("2026-11-23-more/fillable/J-4.pdf");
        byte[] twice =
                FilledSheets.renamed(
                        FilledSheets.filled(sheet, "J-4", Map.of("installed-date", "20/11/2026")),
                        "J-4/installed-date",
                        "J-4/tank-serial");
        Files.write(office.scans().resolve("tablet.pdf"), twice);
        watch();

        assertThat(
                        Files.readString(
                                office.packs().resolve("2026-11-23-more-2").resolve("index.html")))
                .contains("The answer &quot;tank-serial&quot; for job J-4 was not used");
    }

    @Test
    void sheetsThatCannotBeReadOrComeTooLateGoBack() throws IOException {
        byte[] filled = FilledSheets.filled(sheet("J-1"), "J-1", ON_SITE);
        assertThat(returned(FilledSheets.flattened(filled)))
                .contains("its fields are part of its pages now");
        assertThat(returned(Arrays.copyOf(filled, 900))).contains("The file is damaged or locked.");
        assertThat(returned(FilledSheets.saying("another form", filled)))
                .contains("does not say of which job and register it is");

        Office here = office;
        office = Offices.make(folder.resolve("other"));
        assertThat(returned(filled)).contains("is not in filed/");
        office = here;

        drop("later.csv", Offices.register(1));
        assertThat(returned(filled)).contains("A later list has these jobs too").contains("J-1");
        drop("off.csv", HEADINGS + FilledSheets.booked(2).replace(",booked,", ",cancelled,"));
        byte[] second =
                FilledSheets.filled(sheet("J-2"), "J-2", Map.of("tank-serial", "2610040004512102"));
        assertThat(returned(second)).contains("Job J-2 was called off or replaced.");
        assertThat(office.intake()).isEmptyDirectory();
    }

    @Test
    void forgettingDeletesTheSheetsOfTheJob() throws IOException {
        Files.write(
                office.scans().resolve("one.pdf"),
                FilledSheets.filled(sheet("J-1"), "J-1", ON_SITE));
        Files.write(
                office.scans().resolve("two.pdf"),
                FilledSheets.filled(sheet("J-2"), "J-2", ON_SITE));
        watch();
        Program.Run run =
                Program.run(
                        Instant.parse("2046-11-23T12:00:00Z"),
                        folder,
                        "forget",
                        "J-1",
                        "--office",
                        "office",
                        "--warranty-ended",
                        "2036-11-23");
        assertThat(run.out() + run.err()).contains("deleted filed/2026/scans/one.pdf");
        assertThat(files(batch.resolve("fillable"))).containsExactly("J-2.pdf");
        assertThat(files(office.filed().resolve("2026/scans"))).containsExactly("two.pdf");
    }

    /** A claim must not come of work that earns nothing. */
    @Test
    void workWithoutAClaimKeepsItsStage() throws IOException {
        String unpaid = FilledSheets.booked(5).replace(",booked,", ",no claim,");
        drop("free.csv", HEADINGS + unpaid);
        Path sheet = office.packs().resolve("2026-11-23-free/fillable/J-5.pdf");
        Files.write(
                office.scans().resolve("tablet.pdf"),
                FilledSheets.filled(
                        sheet,
                        "J-5",
                        Map.of("installed-date", "20/11/2026", "tank-serial", "2610040004512105")));
        watch();

        Path again = office.packs().resolve("2026-11-23-free-2");
        assertThat(Files.readString(again.resolve("manifest.json")))
                .contains("\"certificates\" : { }");
        assertThat(FilledSheets.text(again.resolve("packs/J-5.pdf")))
                .contains("2610040004512105")
                .doesNotContain("Assignment of");
    }

    /** What lies beside the packs changes none of them, and comes out the same each time. */
    @Test
    void packsAreTheSameWithAndWithoutSheets() throws IOException {
        Files.writeString(folder.resolve("plain.csv"), HEADINGS + FilledSheets.booked(1));
        Path tables = Path.of("input-samples/tables").toAbsolutePath();
        for (String out : List.of("without", "with", "again")) {
            Program.Run run =
                    out.equals("without")
                            ? prepare(tables, out)
                            : prepare(tables, out, "--fillable");
            assertThat(run.exitCode()).as(run.out() + run.err()).isLessThanOrEqualTo(10);
        }
        Path sheet = Path.of("2026-11-23-plain/fillable/J-1.pdf");
        Path pack = Path.of("2026-11-23-plain/packs/J-1.pdf");
        assertThat(folder.resolve("without").resolve(sheet)).doesNotExist();
        assertThat(folder.resolve("with").resolve(pack))
                .hasSameBinaryContentAs(folder.resolve("without").resolve(pack));
        assertThat(folder.resolve("with").resolve(sheet))
                .hasSameBinaryContentAs(folder.resolve("again").resolve(sheet));
        FilledSheets.claimsNothingAndNamesItsFields(folder.resolve("with").resolve(sheet));
    }

    private Program.Run prepare(Path tables, String out, String... more) {
        return Program.run(
                folder,
                Stream.concat(
                                Stream.of(
                                        "prepare",
                                        "plain.csv",
                                        "--tables",
                                        tables.toString(),
                                        "--out",
                                        out),
                                Stream.of(more))
                        .toArray(String[]::new));
    }

    /** By a program that knows nothing of the library that made the sheet. */
    @Test
    @Tag("outside")
    void aSheetFilledInByAnotherProgramIsReadToo() throws IOException {
        String blank = sheet("J-1").toString();
        assertThat(Outside.run(folder, "qpdf", "--check", blank).exitCode()).isZero();
        String json = Outside.run(folder, "qpdf", "--json-output", blank, "-").out();
        Path typed = folder.resolve("typed.json");
        Files.writeString(typed, FilledSheets.typed(json, "J-1/tank-serial", "2610040004512101"));
        String filled = office.scans().resolve("other.pdf").toString();
        Outside.Result run = Outside.run(folder, "qpdf", "--json-input", typed.toString(), filled);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(watch().out()).contains("other.pdf: 1 fact of job J-1 typed on its sheet");

        assertThat(FilledSheets.text(office.packs().resolve("2026-11-23-week-2/packs/J-1.pdf")))
                .contains("2610040004512101");
    }

    private Path sheet(String job) {
        return batch.resolve("fillable/" + job + ".pdf");
    }

    private void drop(String name, String register) throws IOException {
        Files.writeString(office.intake().resolve(name), register);
        watch();
    }

    private Program.Run watch() {
        return Program.run(folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    /** What is said of a sheet that goes back; nothing else may come of it. */
    private String returned(byte[] sheet) throws IOException {
        int before = files(office.packs()).size();
        Path file = Files.write(office.scans().resolve("tablet.pdf"), sheet);
        assertThat(watch().exitCode()).isEqualTo(11);
        assertThat(file).doesNotExist();
        assertThat(files(office.packs())).hasSize(before);
        Path back = office.returned().resolve("2026-11-23-tablet");
        assertThat(back.resolve("tablet.pdf")).hasBinaryContent(sheet);
        String note = Files.readString(back.resolve("WHAT-TO-DO.txt"));
        Disk.delete(back);
        return note;
    }

    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(f -> f.getFileName().toString())
                    .filter(f -> !f.startsWith("."))
                    .sorted()
                    .toList();
        }
    }
}
