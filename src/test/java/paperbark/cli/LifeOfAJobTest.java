package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.office.Offices;

/**
 * One job from the booking to the day on which it is called off, through the whole program. After
 * each list, pack, index, what is owed and the quarter must tell the same.
 */
class LifeOfAJobTest {
    private static final String HEADINGS =
            "Job,Stage,Visit date,Installed on,Assignment signed on,Corrects,Owner,Site street,Site suburb,Site state,"
                    + "Site postcode,Maker,Model,Tank serial,Plumber,Electrician,Plumbing certificate,"
                    + "Plumbing certificate date,Electrical certificate,Electrical certificate date,Old heater,"
                    + "Old maker,Old heater disabled how,Old heater disposal,Old heater removed on,Claim STCs,STC buyer,"
                    + "STC benefit,Claim VEECs,VEEC buyer,VEEC benefit,Full price,Co-payment,Benefit form,New,"
                    + "Complete system,Owner registered for GST\n";
    private static final String BOOKED = row("booked", "", "", "", "", "", "", "", "Boobook");
    private static final String INSTALLED =
            row(
                    "installed",
                    "16/11/2026",
                    "16/11/2026",
                    "",
                    "2610040004512101",
                    "DEMO-1,17/11/2026",
                    "DEMO-E1,16/11/2026",
                    "tank holed,scrap yard,16/11/2026",
                    "Boobook");

    private static final String CORRECTED =
            INSTALLED
                    .replace("2610040004512101", "2610040004512118")
                    .replace("16/11/2026,,Ada", "16/11/2026,J-1: serial misread,Ada");

    @TempDir private Path office;

    @Test
    void aRemarkThatOnlyNamesTheJobIsNotSaidBesideItsClaim() throws IOException {
        prepare("2026-11-20", "installed", INSTALLED);
        prepare("2026-11-24", "named", CORRECTED.replace("J-1: serial misread", "j-1"));
        assertThat(pack("2026-11-24-named"))
                .contains(
                        "J-1-STC for 14 to Kestrel Certificates, of 20 Nov 2026. This paper takes its place");
    }

    @BeforeEach
    void anOffice() throws IOException {
        Offices.make(office);
    }

    private static String row(
            String stage,
            String installed,
            String signed,
            String corrects,
            String serial,
            String plumbing,
            String electrical,
            String old,
            String oldMaker) {
        return ("J-1,%s,16/11/2026,%s,%s,%s,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,%s,"
                        + "Wanda Wattle,Tilly Teatree,%s,%s,electric storage,%s,%s,yes,Kestrel Certificates,504.00,yes,"
                        + "Kestrel Certificates,792.00,4620.00,3324.00,discount on the price,yes,yes,no\n")
                .formatted(
                        stage,
                        installed,
                        signed,
                        corrects,
                        serial,
                        (plumbing.isEmpty() ? "," : plumbing),
                        (electrical.isEmpty() ? "," : electrical),
                        oldMaker,
                        old.isEmpty() ? ",," : old)
                .replace(",,electric storage", ",,electric storage");
    }

    private Program.Run prepare(String day, String name, String rows, String... more)
            throws IOException {
        Path register = office.resolve(name + ".csv");
        Files.writeString(register, HEADINGS + rows);
        String[] words = {
            "prepare",
            register.toString(),
            "--tables",
            "tables",
            "--ledger",
            "paperbark.db",
            "--out",
            "packs",
            "--as-of",
            day
        };
        String[] all = java.util.Arrays.copyOf(words, words.length + more.length);
        System.arraycopy(more, 0, all, words.length, more.length);
        return run(day, all);
    }

    private Program.Run run(String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), office, words);
    }

    /** The text of the job's pack in a batch, without line ends. */
    private String pack(String batch) throws IOException {
        return pages(batch, 1, Integer.MAX_VALUE);
    }

    private String cover(String batch) throws IOException {
        return pages(batch, 1, 2);
    }

    private String pages(String batch, int first, int last) throws IOException {
        Path file = office.resolve("packs").resolve(batch).resolve("packs/J-1.pdf");
        try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
            PDFTextStripper text = new PDFTextStripper();
            text.setStartPage(first);
            text.setEndPage(last);
            return text.getText(pdf).replaceAll("\\s+", " ").replaceAll("(?<=\\w)- (?=\\w)", "-");
        }
    }

    private String index(String batch) throws IOException {
        return Files.readString(office.resolve("packs").resolve(batch).resolve("index.html"))
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ");
    }

    private String owed(String day) {
        return run(day, "owed", "--as-of", "2026-12-31").out();
    }

    private String quarters(String day) {
        return run(day, "quarters", "--as-of", "2026-12-31").out();
    }

    @Test
    void fromTheBookingToTheDayOnWhichItIsCalledOff() throws IOException {
        booked();
        installed();
        corrected();
        cancelled();
    }

    private void booked() throws IOException {
        assertThat(prepare("2026-11-12", "booked", BOOKED).exitCode()).isZero();
        assertThat(pack("2026-11-12-booked"))
                .contains("Site sheet", "no earlier claim was made for it")
                .doesNotContain("These stand", "Printed again");
        assertThat(owed("2026-11-12")).contains("$0.00").doesNotContain("J-1-STC");
        assertThat(quarters("2026-11-12")).doesNotContain("4,620.00");
    }

    /** What was signed on site counts, with the numbers written in by hand. */
    private void installed() throws IOException {
        Program.Run run = prepare("2026-11-20", "installed", INSTALLED);
        assertThat(run.exitCode()).as(run.out()).isZero();
        assertThat(run.out()).doesNotContain("Take back");
        String cover = cover("2026-11-20-installed");
        assertThat(cover)
                .contains(
                        "Owner signed on 16 Nov 2026",
                        "These stand, and are not printed again: STC assignment of batch 2026-11-12-booked,"
                                + " 12 Nov 2026; VEEC assignment of batch 2026-11-12-booked, 12 Nov 2026.");
        assertThat(pack("2026-11-20-installed"))
                .contains("How the certificates were counted", "Your new water heater")
                .doesNotContain("The owner states", "What the owner states");
        assertThat(index("2026-11-20-installed"))
                .contains(
                        "installed 16 Nov 2026, signed 16 Nov 2026",
                        "stands: STC assignment of batch 2026-11-12-booked");
        assertThat(owed("2026-11-20")).contains("J-1-STC", "J-1-VEEC");
        assertThat(quarters("2026-11-20")).contains("1       $4,620.00", "14     12");
    }

    /**
     * A serial was misread on site: what names it is to be signed again, and says what it corrects.
     */
    private void corrected() throws IOException {
        Program.Run run = prepare("2026-11-24", "corrected", CORRECTED);
        assertThat(run.out()).contains("Take back only: ");
        String pack = pack("2026-11-24-corrected");
        assertThat(pack)
                .contains(
                        "STC assignment takes the place of that of batch 2026-11-12-booked",
                        "was signed, so this one is to be signed again.",
                        "An earlier paper or claim was made for it: J-1-STC for 14 to Kestrel Certificates, of 20"
                                + " Nov 2026; J-1: serial misread. This paper takes its place",
                        "Warranty registration takes the place of that of batch 2026-11-20-installed",
                        "These stand, and are not printed again: Old-heater record of batch"
                                + " 2026-11-20-installed, 20 Nov 2026; Statement of benefit of batch 2026-11-20-installed")
                .doesNotContain("no earlier claim was made", "I know of no earlier claim for this");
        assertThat(owed("2026-11-24").split("J-1-STC", -1)).hasSize(2);
        String word = CORRECTED.replace("Boobook", "Bowerbird");
        run = prepare("2026-11-25", "word", word);
        assertThat(run.out())
                .contains(
                        "Take back only: Old-heater record of batch 2026-11-20-installed, VEEC assignment; the"
                                + " other papers stand.");
        assertThat(pack("2026-11-25-word"))
                .contains("These stand, and are not printed again: Warranty", "Bowerbird")
                .doesNotContain("What the owner states", "Your new water heater");
        assertThat(quarters("2026-11-25")).contains("1       $4,620.00", "14     12");
    }

    /** It is off, then on again, then a person calls it off. */
    private void cancelled() throws IOException {
        String word = CORRECTED.replace("Boobook", "Bowerbird");
        Program.Run run =
                prepare("2026-11-26", "cancelled", word.replace("installed", "cancelled"));
        assertThat(run.exitCode()).isEqualTo(12);
        assertThat(run.out()).contains("withdrawn: J-1-STC, J-1-VEEC.");
        assertThat(office.resolve("advices/withdrawal-5.json")).isRegularFile();
        assertThat(owed("2026-11-26")).doesNotContain("J-1-STC");
        assertThat(quarters("2026-11-26")).doesNotContain("4,620.00");

        run = prepare("2026-11-27", "after-all", word);
        assertThat(run.out())
                .contains(
                        "Job J-1 was withdrawn on 26 Nov 2026: cancelled in the list cancelled.csv.");
        assertThat(pack("2026-11-27-after-all")).contains("withdrawn; J-1: serial misread");
        assertThat(owed("2026-11-27")).contains("J-1-STC");

        run = run("2026-11-28", "withdraw", "j-1", "--because", "returned to the maker");
        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Withdrawn:    J-1-STC, 14 certificates");
        assertThat(owed("2026-11-28")).doesNotContain("J-1-STC");
        run = prepare("2026-11-29", "still-there", word);
        assertThat(run.out()).contains("so nothing is prepared or claimed for it");

        String export = export("2026-11-29", "before");
        Files.delete(office.resolve("paperbark.db"));
        assertThat(run("2026-11-30", "ledger-rebuild", ".").exitCode()).isZero();
        assertThat(export("2026-11-30", "after")).isEqualTo(export);
        assertThat(run("2026-11-30", "doctor", ".").out()).doesNotContain("ledger is not");
    }

    private String export(String day, String folder) throws IOException {
        run(day, "export", "--out", folder);
        StringBuilder all = new StringBuilder();
        for (String table :
                new String[] {"entry", "job", "withdrawn", "withdrawal", "paper", "claim"}) {
            all.append(Files.readString(office.resolve(folder).resolve(table + ".csv")));
        }
        return all.toString();
    }
}
