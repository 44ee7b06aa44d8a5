package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.miachm.sods.Sheet;
import com.github.miachm.sods.SpreadSheet;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;
import paperbark.output.paper.RememberedPapers;

/** A person is forgotten in ledger and files once the law allows it, and not a day before. */
class ForgetTest {
    /** Installed on 16 Nov 2026: the file is kept seven years, certificates until 2033 at most. */
    private static final Instant EARLY = Instant.parse("2033-11-16T12:00:00Z");

    private static final Instant LATE = Instant.parse("2041-01-01T12:00:00Z");

    private static final List<String> JOB_1 =
            List.of("zyxna", "quagmire", "zyx.one@", "5550 1937", "87650123", "1quagmirelane");

    @TempDir private static Path shared;

    @TempDir private Path folder;

    private Office office;

    /** One register as a workbook, the correction as CSV, and a list that was refused. */
    @BeforeAll
    static void workForAWhile() throws IOException {
        Office office = Offices.make(shared.resolve("office"));
        Files.write(office.intake().resolve("one.xlsx"), workbook(register(1, 2)));
        watch(Instant.parse("2026-11-23T12:00:00Z"), office);
        Files.writeString(
                office.intake().resolve("two.csv"),
                register(1, 3).replace("2610040004512101", "2610040004512901"));
        watch(Instant.parse("2026-11-24T12:00:00Z"), office);
        Files.writeString(
                office.intake().resolve("bad.csv"),
                register(1).replaceFirst("Owner,", "Owner,Owner,"));
        watch(Instant.parse("2026-11-25T12:00:00Z"), office);
        assertThat(Office.list(office.packs())).hasSizeGreaterThanOrEqualTo(2);
        assertThat(Office.list(office.returned())).hasSize(1);
    }

    private static String register(int... numbers) {
        List<String> lines = new ArrayList<>(Offices.register(numbers).lines().toList());
        lines.set(0, lines.get(0) + ",Phone,E-mail,Account name,BSB,Account number");
        for (int i = 1; i < lines.size(); i++) {
            boolean first = numbers[i - 1] == 1;
            String row = lines.get(i);
            if (first) {
                row =
                        row.replace("Ada Amberwood", "Zyxna Quagmire")
                                .replace("1 Teaspoon Lane", "1 Quagmire Lane");
            }
            lines.set(
                    i,
                    row.replace("discount on the price", "payment")
                            + (first
                                    ? ",03 5550 1937,zyx.one@example.com,Zyxna Quagmire,012-987,87650123"
                                    : ",03 5550 0111,two@example.com,Ada Amberwood,012-345,111222333"));
        }
        return String.join("\n", lines) + "\n";
    }

    private static byte[] workbook(String csv) throws IOException {
        try (XSSFWorkbook workbook = new XSSFWorkbook();
                java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream()) {
            var sheet = workbook.createSheet("Week");
            int r = 0;
            for (String line : csv.lines().toList()) {
                var row = sheet.createRow(r++);
                int c = 0;
                for (String field : line.split(",", -1)) {
                    row.createCell(c++).setCellValue(field);
                }
            }
            workbook.write(out);
            return out.toByteArray();
        }
    }

    private static void watch(Instant now, Office office) {
        Program.run(now, shared, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(shared.resolve("office"), folder.resolve("office"));
        office = Office.in(folder.resolve("office"));
    }

    private Program.Run forget(Instant now, String job, String... more) {
        List<String> words = new ArrayList<>(List.of("forget", job, "--office", "office"));
        words.addAll(List.of(more));
        return Program.run(now, folder, words.toArray(String[]::new));
    }

    /** What can be read in the office's files but for the tables, squeezed, by file. */
    private Map<String, String> readable() throws IOException {
        Map<String, String> texts = new HashMap<>();
        for (Path file : Invariants.files(office.root())) {
            String name = office.root().relativize(file).toString();
            if (!name.startsWith("tables/") && !name.startsWith("office.lock")) {
                texts.put(name, text(name, Files.readAllBytes(file)));
            }
        }
        return texts;
    }

    private static String text(String name, byte[] content) throws IOException {
        StringBuilder all = new StringBuilder(new String(content, StandardCharsets.ISO_8859_1));
        if (name.endsWith(".xlsx")) {
            try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(content))) {
                for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
                    all.append(new String(zip.readAllBytes(), StandardCharsets.UTF_8));
                }
            }
        }
        if (name.endsWith(".pdf")) {
            try (PDDocument pdf = Loader.loadPDF(content)) {
                all.append(new PDFTextStripper().getText(pdf));
            }
        }
        return all.toString().toLowerCase(Locale.ROOT);
    }

    private List<String> found(List<String> words) throws IOException {
        List<String> found = new ArrayList<>();
        readable()
                .forEach(
                        (name, text) ->
                                words.stream()
                                        .filter(text::contains)
                                        .forEach(word -> found.add(word + " in " + name)));
        return found;
    }

    private Map<String, String> files() throws IOException {
        Map<String, String> files = new HashMap<>(readable());
        files.keySet().removeIf(name -> name.equals("status.html"));
        return files;
    }

    @Test
    void nothingIsForgottenBeforeTheTimeIsOver() throws IOException {
        Map<String, String> before = files();
        Program.Run run = forget(EARLY, "J-1");
        assertThat(run.exitCode()).isEqualTo(13);
        assertThat(run.out())
                .containsPattern("longest warranty +until 15 Nov 2033")
                .containsPattern("the file of the job +until 16 Nov 2033  How we read")
                .containsPattern("accounts +until 16 Nov 2033 .*memory, not verified")
                .containsPattern("papers of its STCs +until 16 Nov 2032");
        assertThat(run.err()).contains("must be kept", "It may be forgotten from 17 Nov 2033 on.");
        assertThat(files()).isEqualTo(before);
        assertThat(forget(EARLY.plusSeconds(86_400), "J-1", "--only-show").exitCode()).isZero();
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void afterItNoFileTellsOfThePersonAndTheOthersAreStillThere() throws IOException {
        assertThat(found(JOB_1)).hasSizeGreaterThan(20);
        Program.Run run = forget(LATE, "j-1");
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("deleted packs/2026-11-23-one/packs/J-1.pdf")
                .contains("emptied filed/2026/2026-11-23-one/one.xlsx")
                .contains("Kept:   job number, serials");
        assertThat(found(JOB_1)).isEmpty();
        watch(LATE, office);
        assertThat(office.status())
                .content()
                .contains("packs/2026-11-23-one/\"")
                .doesNotContain("2026-11-23-one/index.html");
        List<String> others = found(List.of("ada amberwood"));
        assertThat(others.toString())
                .contains("2026-11-23-one/packs/J-2.pdf")
                .contains("2026-11-24-two/packs/J-3.pdf")
                .contains("2026-11-23-one/summary.xlsx")
                .contains("filed/2026/2026-11-23-one/one.xlsx")
                .contains("filed/2026/2026-11-24-two/two.csv");
    }

    @Test
    void theLedgerStaysProvedAndTheHeaterStaysClaimed() throws IOException {
        forget(LATE, "J-1");
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            assertThat(ledger.claims(LocalDate.of(2041, 1, 1)))
                    .extracting(c -> c.reference())
                    .contains("J-1-STC", "J-2-STC");
        }
        Files.writeString(
                office.intake().resolve("new.csv"),
                Offices.register(1) + Offices.row(7, "2610040004512901"));
        Program.Run watch =
                Program.run(
                        folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).isEqualTo(10);
        String index =
                Files.readString(office.packs().resolve("2026-11-23-new").resolve("index.html"));
        assertThat(index).contains("job-forgotten").contains("serial-claimed-before");
    }

    @Test
    void aListThatBringsItAgainGetsNoPackAndGoesBack() throws IOException {
        forget(LATE, "J-1");
        Files.writeString(office.intake().resolve("again.csv"), register(1));
        assertThat(forget(LATE, "J-1").out()).contains("the lists in intake were not looked into");
        Program.Run watch =
                Program.run(
                        LATE, folder, "watch", office.root().toString(), "--once", "--quiet-for=0");
        assertThat(watch.exitCode()).isEqualTo(11);
        assertThat(office.packs().resolve("2041-01-01-again")).doesNotExist();
        assertThat(office.returned().resolve("2041-01-01-again/WHAT-TO-DO.txt"))
                .content()
                .contains("Job J-1 was in batch", "run forget once more");
        try (Ledger ledger = Ledger.open(office.ledger())) {
            assertThat(ledger.versions("J-1")).allMatch(v -> v.forgotten());
        }
    }

    @Test
    void whatCannotBeLookedIntoIsNamed() throws IOException {
        Path zip = Files.writeString(office.returned().resolve("old.zip"), "J-1 and others");
        Path cut = Files.writeString(office.filed().resolve("cut.xlsx"), "not a workbook");
        Files.writeString(office.filed().resolve("open.csv"), "Job,Owner,Town\nJ-1,\"A,B\n");
        assertThat(forget(LATE, "J-1").out())
                .contains("Look:   returned/old.zip was left as it is")
                .contains("Look:   filed/cut.xlsx was left as it is")
                .contains("Look:   filed/open.csv was left as it is")
                .doesNotContain("WHAT-TO-DO.txt", "Look:   filed/2026");
        assertThat(zip).exists();
        assertThat(cut).exists();
    }

    @Test
    void anOpenDocumentSpreadsheetIsEmptiedToo() throws IOException {
        Path list = office.filed().resolve("old.ods");
        try (OutputStream out = Files.newOutputStream(list)) {
            Sheet sheet = new Sheet("Week", 3, 2);
            sheet.getRange(0, 0, 3, 2)
                    .setValues("Job", "Owner", "J-1", "Zyxna Quagmire", "J-2", "Ada Amberwood");
            SpreadSheet book = new SpreadSheet();
            book.appendSheet(sheet);
            book.save(out);
        }
        assertThat(forget(LATE, "J-1").out()).contains("emptied filed/old.ods");
        Sheet left = new SpreadSheet(list.toFile()).getSheet("Week");
        assertThat(left.getRange(0, 0, 3, 2).getValues())
                .isEqualTo(
                        new Object[][] {{"Job", "Owner"}, {"J-1", null}, {"J-2", "Ada Amberwood"}});
        assertThat(forget(LATE, "J-1").out()).doesNotContain("old.ods");
    }

    @Test
    void aFolderThatIsNoOfficeStaysAsItIs() throws IOException {
        Path other = Files.createDirectory(folder.resolve("other"));
        for (List<String> words :
                List.of(
                        List.of("forget", "J-1", "--office", "other"),
                        List.of("watch", "other", "--once"),
                        List.of("ledger-rebuild", "other"))) {
            Program.Run run = Program.run(LATE, folder, words.toArray(String[]::new));
            assertThat(run.exitCode()).as(words.toString()).isEqualTo(2);
            assertThat(run.err()).contains("is no office folder");
        }
        assertThat(other).isEmptyDirectory();
    }

    @Test
    void whatIsForgottenStaysSoInALedgerMadeAnew() throws IOException {
        forget(LATE, "J-1");
        List<String> before = all();
        Files.delete(Offices.ledgerFile(office));
        assertThat(Program.run(LATE, folder, "ledger-rebuild", "office").exitCode()).isZero();
        watch(LATE, office);
        assertThat(all()).isEqualTo(before);
        assertThat(found(JOB_1)).isEmpty();
    }

    private List<String> all() {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            return Export.of(ledger).stream()
                    .filter(table -> !table.name().equals("progress"))
                    .flatMap(table -> table.rows().stream().map(row -> table.name() + row))
                    .toList();
        }
    }

    @Test
    void aSecondTimeChangesNothing() throws IOException {
        Path aside = Files.writeString(office.root().resolve("paperbark-set-aside.db"), "damaged");
        assertThat(forget(LATE, "J-1").out())
                .contains("Look:   ", "paperbark-set-aside.db was left as it is");
        assertThat(aside).hasContent("damaged");
        Map<String, String> once = files();
        Program.Run run = forget(LATE, "J-1");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).doesNotContain("emptied", "deleted");
        Map<String, String> twice = files();
        // A copy of the ledger is made anew each time.
        twice.keySet().removeIf(name -> name.matches("backups/.*|paperbark\\.db"));
        once.keySet().removeIf(name -> name.matches("backups/.*|paperbark\\.db"));
        assertThat(twice).isEqualTo(once);
    }

    @Test
    void whatWasCutShortIsDoneWithTheNextStart() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.forget("J-1", LocalDate.of(2041, 1, 1), LATE, "test");
        }
        assertThat(found(JOB_1)).isNotEmpty();
        watch(LATE, office);
        assertThat(found(JOB_1)).isEmpty();
    }

    @Test
    void theProcessLetsGoOfThePapersThatItRemembers() throws IOException {
        Object remembered = RememberedPapers.now();
        watch(LATE, office);
        forget(LATE, "J-1", "--only-show");
        assertThat(RememberedPapers.now()).isSameAs(remembered);
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.forget("J-1", LocalDate.of(2041, 1, 1), LATE, "test");
        }
        watch(LATE, office);
        assertThat(RememberedPapers.now()).isNotSameAs(remembered);
        remembered = RememberedPapers.now();
        forget(LATE, "J-1");
        assertThat(RememberedPapers.now()).isNotSameAs(remembered);
    }

    @Test
    void aJobThatTheLedgerDoesNotKnowOrWhoseWarrantyItDoesNotKnow() throws IOException {
        Program.Run unknown = forget(LATE, "J-99");
        assertThat(unknown.exitCode()).isEqualTo(2);
        assertThat(unknown.err()).contains("no job J-99");
        Files.writeString(
                office.intake().resolve("other.csv"),
                Offices.register(8).replace("Dunlin,D270-A", "Smew,S-1"));
        watch(Instant.parse("2026-11-26T12:00:00Z"), office);
        Program.Run open = forget(LATE, "J-8");
        assertThat(open.exitCode()).isEqualTo(13);
        assertThat(open.err()).contains("--warranty-ended");
        assertThat(forget(LATE, "J-8", "--warranty-ended", "2041-01-01").exitCode()).isEqualTo(13);
        assertThat(forget(LATE, "J-8", "--warranty-ended", "2035-01-01").exitCode()).isZero();
    }
}
