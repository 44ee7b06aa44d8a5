package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.james.mime4j.dom.BinaryBody;
import org.apache.james.mime4j.dom.Message;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.scan.Scanned;

/**
 * The files of jobs in a whole office: who tells of them, who shows an owner's number, who forgets.
 */
class PhotosTest {
    private static final String NUMBER = "(03) 5550 1937";
    private static final String DAY = "2026-11-23";

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void threeJobsOfWhichTheSecondIsHeld() throws IOException {
        office = Offices.make(folder.resolve("office"));
        List<String> lines = Offices.register(1, 2, 3).lines().toList();
        Files.writeString(
                office.intake().resolve("week.csv"),
                lines.get(0)
                        + ",Phone\n"
                        + lines.get(1)
                        + ",03 5550 1937\n"
                        + lines.get(2).replace("DEMO-2,17/11/2026", ",")
                        + ",\n"
                        + lines.get(3)
                        + ",03 5550 0111\n");
        watch(DAY);
        assertThat(Files.readString(office.week(".html"))).doesNotContain("Photographs");
    }

    private Program.Run run(String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), office.root(), words);
    }

    private void watch(String day) {
        Program.Run run = run(day, "watch", ".", "--once", "--quiet-for", "0");
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
    }

    private Path photo(String name) {
        return office.photos().resolve(name);
    }

    private static String text(String html) {
        return html.replaceAll("(?s)<style>.*</style>", " ")
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ");
    }

    private Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> all = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(office.photos())) {
            for (Path file : walk.filter(Files::isRegularFile).toList()) {
                all.put(file.toString(), Files.readAllBytes(file));
            }
        }
        return all;
    }

    @Test
    void commandStatusPageAndWeekTellTheSameAndNoFileChanges() throws IOException {
        new Camera()
                .at("2026:11:16 10:00:00")
                .in(37 * 60 + 36, 144 * 60 + 14)
                .shoot(photo("J-1/tank.jpg"));
        new Camera().at("2026:09:01 10:00:00").shoot(photo("J-1/plate.jpg"));
        new Camera().in(27 * 60 + 28, 153 * 60).shoot(photo("J-2 tank.jpg"));
        Files.writeString(photo("J-2 plumbing certificate.pdf"), "%PDF-1.7\n%%EOF\n");
        Files.writeString(photo("J-1/scrap receipt.pdf"), "%PDF-1.7\n%%EOF\n");
        new Camera().shoot(photo("DSC_0001.jpg"));
        Map<String, byte[]> before = files();

        watch(DAY);
        Program.Run told = run(DAY, "photos", ".");

        String day =
                "A picture was taken on another day than the installation of 16 Nov 2026, by the"
                        + " camera's clock: J-1/plate.jpg (1 Sep 2026).";
        String place =
                "A picture was taken outside VIC, where the site of the job is: J-2 tank.jpg (27.47"
                        + " south, 153.00 east).";
        String none = "A file is of no job for certain: DSC_0001.jpg";
        assertThat(told.exitCode()).isEqualTo(10);
        assertThat(told.out()).contains(day, place, none);
        assertThat(text(Files.readString(office.status())))
                .contains(day.replace("'", "&#39;"), place, none);
        assertThat(text(Files.readString(office.week(".html")))).contains(place, none);
        assertThat(told.out())
                .contains(
                        "Job J-1: 3 files",
                        "  Wanted: Photographs: 2",
                        "  Wanted: Plumbing certificate: none, its number is in the register",
                        "  Wanted: Receipt for the old heater: 1",
                        "  Pictures: 2. Days are told by 2. Places are told by 1; the state was compared,"
                                + " neither suburb nor street.",
                        "Job J-2: 2 files",
                        "  Wanted: Plumbing certificate: 1, its number is not in the register yet");
        assertThat(text(Files.readString(office.week(".html"))))
                .contains(
                        "J-1 : Plumbing certificate, Electrical certificate",
                        "J-3 : Photographs, Plumbing certificate, Electrical certificate, Receipt for the old heater",
                        "J-2 (a certificate lies in photos/: is its number in the register?)");
        assertThat(files()).containsExactlyEntriesOf(before);
    }

    @Test
    void aFileThatComesLaterIsSeenByTheNextRound() throws IOException {
        new Camera().shoot(photo("J-1/tank.jpg"));
        watch(DAY);
        assertThat(text(Files.readString(office.week(".html")))).contains("J-3 : Photographs");
        new Camera().shoot(photo("J-3/tank.jpg"));
        watch(DAY);
        assertThat(text(Files.readString(office.week(".html"))))
                .doesNotContain("J-3 : Photographs");
    }

    @Test
    void nothingIsWantedOfAJobThatWasCalledOff() throws IOException {
        new Camera().at("2020:01:01 10:00:00").shoot(photo("J-2/tank.jpg"));
        assertThat(run(DAY, "withdraw", "J-2", "--because", "called off").exitCode()).isZero();
        Program.Run told = run(DAY, "photos", ".", "--job", "j-2");
        assertThat(told.exitCode()).isZero();
        assertThat(told.out())
                .contains(
                        "Job J-2: 1 file",
                        "The job was called off or replaced; nothing is wanted for it.")
                .doesNotContain("Wanted");
        assertThat(run(DAY, "photos", ".", "--job", "J-9").exitCode()).isEqualTo(2);
    }

    @Test
    void theWeekNamesTheNumberToRingAndItsLetterDoesNot() throws IOException {
        scanAWarranty();
        watch(DAY);
        assertThat(text(Files.readString(office.week(".html"))))
                .contains(NUMBER, "(03) 5550 0111")
                .doesNotContain("Amberwood", "Teaspoon");
        assertThat(sheet(Files.readAllBytes(office.week(".pdf")))).contains(NUMBER);
        Message draft =
                new DefaultMessageBuilder()
                        .parseMessage(
                                new ByteArrayInputStream(Files.readAllBytes(office.week(".eml"))));
        Multipart parts = (Multipart) draft.getBody();
        String page =
                new String(
                        ((org.apache.james.mime4j.dom.TextBody)
                                        parts.getBodyParts().get(0).getBody())
                                .getInputStream()
                                .readAllBytes(),
                        StandardCharsets.UTF_8);
        byte[] attached =
                ((BinaryBody) parts.getBodyParts().get(1).getBody())
                        .getInputStream()
                        .readAllBytes();
        assertThat(page).contains("J-1-STC").doesNotContain("5550 1937");
        assertThat(sheet(attached)).contains("J-1-STC").doesNotContain("5550 1937");
    }

    @Test
    void forgettingDeletesTheFilesOfTheJobAndTheNumber() throws IOException {
        scanAWarranty();
        new Camera().shoot(photo("J-1/roof/tank.jpg"));
        new Camera().shoot(photo("all/J-1 plate.jpg"));
        new Camera().shoot(photo("J-2/tank.jpg"));
        new Camera().shoot(photo("J-1 and J-2.jpg"));
        watch(DAY);
        assertThat(Files.readString(office.week(".html"))).contains(NUMBER);

        Program.Run run = run("2041-01-01", "forget", "J-1", "--warranty-ended", "2040-01-01");

        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(run.out())
                .contains(
                        "deleted photos/J-1/roof/tank.jpg",
                        "deleted photos/all/J-1 plate.jpg",
                        "photos/J-1 and J-2.jpg was left as it is and may tell of the job still");
        assertThat(photo("J-1")).doesNotExist();
        assertThat(photo("all")).doesNotExist();
        assertThat(photo("J-2/tank.jpg")).exists();
        assertThat(office.week(".html")).doesNotExist();
        assertThat(office.week(".pdf")).doesNotExist();
        assertThat(office.week(".eml")).doesNotExist();
        watch("2041-01-02");
        assertThat(Files.readString(office.week(".html")))
                .contains("J-1-STC")
                .doesNotContain(NUMBER);
        // Nobody is rung about a claim that is past its last day; as of a day before it they are.
        run(DAY, "week", ".");
        assertThat(Files.readString(office.week(".html")))
                .contains("J-1-STC", "(03) 5550 0111")
                .doesNotContain(NUMBER);
    }

    @Test
    void doctorTellsOfALinkThatLeadsNowhere() throws IOException {
        assertThat(run(DAY, "doctor", ".").out()).doesNotContain("photos/");
        Files.createSymbolicLink(office.photos(), folder.resolve("gone"));
        assertThat(run(DAY, "doctor", ".").out()).contains("photos/").contains("leads nowhere");
        Files.createDirectory(folder.resolve("gone"));
        assertThat(run(DAY, "doctor", ".").out()).containsPattern("photos/ +can be read");
    }

    /** From the first pile on the office is told which assignments are not back. */
    private void scanAWarranty() throws IOException {
        Path batch = office.packs().resolve("2026-11-23-week");
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, batch, "J-1", "warranty");
            pile.save(office.scans().resolve("pile.pdf"));
        }
    }

    private static String sheet(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }
}
