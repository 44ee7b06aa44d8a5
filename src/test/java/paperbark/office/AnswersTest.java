package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Ending;
import paperbark.cli.Program;
import paperbark.ledger.Ledger;

/** Missing facts, typed where they are seen to be missing and dropped back. */
class AnswersTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    /** Three jobs that lack the tank serial; the second lacks the plumber's certificate too. */
    private static final String LACKING =
            Offices.register(1, 2, 3).replaceAll("26100400045121..", "").replace("DEMO-2,", ",");

    @TempDir private Path folder;
    private Office office;
    private Instant now = Instant.parse("2026-11-23T12:00:00Z");
    private final List<String> told = new ArrayList<>();

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
    }

    @Test
    void whatIsMissingIsAskedAndItsAnswersCompleteTheRegister() throws Exception {
        assertThat(drop("week.csv", LACKING.getBytes())).containsExactly(Ending.HELD);
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");
        assertThat(questions(asking))
                .contains("J-1 tank-serial", "J-2 tank-serial", "J-2 plumbing-certificate");
        assertThat(Files.readString(asking.resolveSibling("index.html")))
                .contains("<a href=\"still-missing.xlsx\">");

        byte[] answered =
                answered(
                        asking,
                        Map.of(
                                "J-1 tank-serial", "2610040004512101",
                                "J-2 tank-serial", "2610040004512102",
                                "J-2 plumbing-certificate", "DEMO-0002"));
        assertThat(drop("still-missing.xlsx", answered)).hasSize(1);
        Path again = office.packs().resolve("2026-11-23-week-2");
        assertThat(again.resolve("packs/J-1.pdf")).isRegularFile();
        assertThat(again.resolve("packs/J-3.pdf")).as("nobody answered for it").doesNotExist();
        assertThat(text(again.resolve("packs/J-1.pdf"))).contains("2610040004512101");
        assertThat(text(again.resolve("packs/J-2.pdf"))).contains("DEMO-0002");
        assertThat(office.filed().resolve("2026/2026-11-23-week/week.csv"))
                .as("the register stays as it came")
                .hasContent(LACKING);
        assertThat(office.filed().resolve("2026/2026-11-23-week-2/week.xlsx")).isRegularFile();
        assertThat(office.filed().resolve("2026/2026-11-23-week-2/answers/still-missing.xlsx"))
                .hasBinaryContent(answered);
        try (Ledger ledger = Ledger.open(office.ledger())) {
            assertThat(ledger.versions("J-1")).hasSize(2);
            assertThat(ledger.versions("J-3")).hasSize(1);
        }
        assertThat(Files.readString(office.status())).doesNotContain("still held.");

        assertThat(drop("again.xlsx", answered))
                .as("as after a run that was cut before it had put the answers away")
                .containsExactly(Ending.ALREADY);
        try (var filed = Files.list(office.filed().resolve("2026/2026-11-23-week-2"))) {
            assertThat(filed.filter(Files::isRegularFile)).hasSize(1);
        }
    }

    /** Of tabs that are alike the newest is read, and its answers belong to it. */
    @Test
    void answersCompleteAnOldWorkbookWithATabAMonth() throws Exception {
        Path columns = office.tables().resolve("columns.csv");
        Files.writeString(
                columns, Files.readString(columns).stripTrailing() + "\nsheet,newest month,\n");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (HSSFWorkbook book = new HSSFWorkbook()) {
            for (String month : List.of("Oct 2026", "Nov 2026")) {
                Sheet sheet = book.createSheet(month);
                for (String line : LACKING.lines().toList()) {
                    Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
                    for (String text : line.split(",")) {
                        row.createCell(Math.max(0, row.getLastCellNum())).setCellValue(text);
                    }
                }
            }
            book.write(bytes);
        }
        assertThat(drop("week.xls", bytes.toByteArray())).containsExactly(Ending.HELD);
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");

        drop("a.xlsx", answered(asking, Map.of("J-1 tank-serial", "2610040004512101")));
        assertThat(text(office.packs().resolve("2026-11-23-week-2/packs/J-1.pdf")))
                .contains("2610040004512101");
    }

    /** What is only known on site is for the site sheet. */
    @Test
    void aBookedJobIsAskedForWhatIsKnownBeforeTheVisit() throws Exception {
        String booked =
                LACKING.replace("J-2,installed,16/11/2026", "J-2,booked,")
                        .replace("Wanda Wattle,Tilly Teatree,,17/11/2026,DEMO-E2", ",,,,");
        assertThat(drop("week.csv", booked.getBytes())).hasSize(1);
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");
        assertThat(questions(asking).stream().filter(q -> q.startsWith("J-2")))
                .containsExactly("J-2 owner-phone", "J-2 owner-email", "J-2 plumber", "J-2 seller");
        try (XSSFWorkbook book = open(asking)) {
            assertThat(book.getSheet("Still missing"))
                    .filteredOn(row -> row.getCell(0).getStringCellValue().equals("J-2"))
                    .allSatisfy(
                            row ->
                                    assertThat(row.getCell(1).getStringCellValue())
                                            .endsWith(", before the visit"));
        }

        drop("a.xlsx", answered(asking, Map.of("J-2 owner-phone", "0491 570 156")));
        assertThat(text(office.packs().resolve("2026-11-23-week-2/packs/J-2.pdf")))
                .contains("0491 570 156");
    }

    @Test
    void answersToAnswersKeepTheEarlierOnes() throws Exception {
        drop("week.csv", LACKING.getBytes());
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");
        drop("a.xlsx", answered(asking, Map.of("J-2 tank-serial", "2610040004512102")));
        Path second = office.packs().resolve("2026-11-23-week-2/still-missing.xlsx");
        assertThat(questions(second))
                .contains("J-2 plumbing-certificate")
                .doesNotContain("J-2 tank-serial", "J-1 tank-serial");
        drop("b.xlsx", answered(second, Map.of("J-2 plumbing-certificate", "DEMO-0002")));
        assertThat(text(office.packs().resolve("2026-11-23-week-3/packs/J-2.pdf")))
                .contains("2610040004512102", "DEMO-0002");

        assertThat(drop("a2.xlsx", answered(asking, Map.of("J-2 owner-phone", "0491 570 156"))))
                .as("the first sheet is out of date for this job")
                .containsExactly(Ending.REFUSED);
        assertThat(note("a2")).contains("out of date: J-2").contains("newest batch");
        assertThat(drop("c.xlsx", answered(asking, Map.of("J-1 tank-serial", "2610040004512101"))))
                .as("and not for the others")
                .isNotEqualTo(List.of(Ending.REFUSED));
    }

    @Test
    void aLaterListMakesAnswersStaleAndStrangersAreSentBack() throws Exception {
        drop("week.csv", LACKING.getBytes());
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");
        byte[] answers = answered(asking, Map.of("J-1 tank-serial", "2610040004512109"));
        drop("mended.csv", Offices.register(1).getBytes());
        assertThat(drop("late.xlsx", answers)).containsExactly(Ending.REFUSED);
        assertThat(note("late")).contains("A later list has these jobs too").contains("J-1");

        assertThat(drop("blank.xlsx", Files.readAllBytes(asking))).containsExactly(Ending.REFUSED);
        assertThat(note("blank")).contains("Nothing is filled in");

        Office other = Offices.make(folder.resolve("other"));
        office = other;
        assertThat(drop("foreign.xlsx", answers)).containsExactly(Ending.REFUSED);
        assertThat(note("foreign")).contains("is not in filed/");
    }

    @Test
    void aWrongAnswerIsAFindingOfItsJobAndForgettingForgetsAnswersToo() throws Exception {
        drop("week.csv", LACKING.getBytes());
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");
        drop("wrong.xlsx", answered(asking, Map.of("J-1 owner-phone", "0491 570 15")));
        Path batch = office.packs().resolve("2026-11-23-week-2");
        assertThat(Files.readString(batch.resolve("manifest.json"))).contains("J-1");
        Program.Run check =
                Program.run(
                        folder,
                        "check",
                        "office/filed/2026/2026-11-23-week-2/week.xlsx",
                        "--tables",
                        "office/tables",
                        "--explain");
        assertThat(check.out()).contains("[phone-wrong]").contains("Jobs:         1");

        Erasure erasure = new Erasure("J-1");
        erasure.ofLists(office.filed(), new ArrayList<>());
        for (String name : List.of("week.xlsx", "answers/wrong.xlsx")) {
            assertThat(
                            new String(
                                    unpacked(
                                            office.filed()
                                                    .resolve("2026/2026-11-23-week-2")
                                                    .resolve(name))))
                    .as(name)
                    .doesNotContain("0491 570 15");
        }
    }

    /** The same answers in an .xlsx register, with a column for the fact and days as days. */
    @Test
    void answersTakeTheFormOfTheirCells() throws Exception {
        String lacking = Offices.register(1).replace("17/11/2026", "").replace("DEMO-1,", ",");
        drop("week.csv", lacking.getBytes());
        Path asking = office.packs().resolve("2026-11-23-week/still-missing.xlsx");
        try (XSSFWorkbook book = open(asking)) {
            Sheet sheet = book.getSheet("Still missing");
            assertThat(sheet.getProtect()).isTrue();
            for (Row row : sheet) {
                if (row.getRowNum() > 0) {
                    assertThat(row.getCell(2).getCellStyle().getLocked()).isFalse();
                    assertThat(row.getCell(2).getCellStyle().getDataFormatString())
                            .isIn("@", "d mmm yyyy");
                }
            }
        }
    }

    private List<Ending> drop(String name, byte[] content) throws Exception {
        Path file = Files.write(office.intake().resolve(name), content);
        Files.setLastModifiedTime(file, FileTime.from(now.minusSeconds(60)));
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant =
                    new Attendant(
                            lock,
                            new Attendant.World(
                                    () -> now,
                                    () -> TODAY,
                                    Duration.ofSeconds(10),
                                    30,
                                    "test",
                                    told::add));
            List<Ending> endings = new ArrayList<>(attendant.round().endings());
            now = now.plusSeconds(11);
            endings.addAll(attendant.round().endings());
            return endings;
        }
    }

    private String note(String stem) throws IOException {
        return Files.readString(
                office.returned().resolve("2026-11-23-" + stem).resolve("WHAT-TO-DO.txt"));
    }

    private static List<String> questions(Path asking) throws IOException {
        try (XSSFWorkbook book = open(asking)) {
            List<String> questions = new ArrayList<>();
            for (Row row : book.getSheet("Still missing")) {
                questions.add(
                        row.getCell(0).getStringCellValue()
                                + " "
                                + row.getCell(4).getStringCellValue());
            }
            return questions;
        }
    }

    private static byte[] answered(Path asking, Map<String, String> answers) throws IOException {
        try (XSSFWorkbook book = open(asking)) {
            int used = 0;
            for (Row row : book.getSheet("Still missing")) {
                String question =
                        row.getCell(0).getStringCellValue()
                                + " "
                                + row.getCell(4).getStringCellValue();
                if (answers.containsKey(question)) {
                    row.getCell(2).setCellValue(answers.get(question));
                    used++;
                }
            }
            assertThat(used).isEqualTo(answers.size());
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    private static byte[] unpacked(Path workbook) throws IOException {
        StringBuilder all = new StringBuilder();
        DataFormatter shown = new DataFormatter();
        try (XSSFWorkbook book = open(workbook)) {
            for (Sheet sheet : book) {
                sheet.forEach(
                        row -> row.forEach(c -> all.append(shown.formatCellValue(c)).append('\n')));
            }
            for (int i = 0; i < book.getSharedStringSource().getUniqueCount(); i++) {
                all.append(book.getSharedStringSource().getItemAt(i).getString()).append('\n');
            }
        }
        return all.toString().getBytes();
    }

    private static String text(Path pack) throws IOException {
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pack))) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static XSSFWorkbook open(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new XSSFWorkbook(in);
        }
    }
}
