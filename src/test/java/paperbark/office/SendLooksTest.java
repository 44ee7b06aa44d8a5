package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.PageMap;
import paperbark.cli.Program;
import paperbark.scan.Scanned;

/** The drafts say what index, papers and findings say, so that nobody sends what should wait. */
class SendLooksTest {
    private static final Instant NOW = Instant.parse("2026-11-23T02:00:00Z");
    private static final String BATCH = "2026-11-23-week/";

    @TempDir private Path folder;

    private Office office() throws IOException {
        return Offices.make(folder.resolve("office"));
    }

    private void drop(Office office, String name, String register) throws IOException {
        Files.writeString(office.intake().resolve(name + ".csv"), register);
        watch(office);
    }

    private void watch(Office office) {
        run("watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    private Program.Run run(String... words) {
        Program.Run run = Program.run(NOW, folder, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10, 12);
        return run;
    }

    private static Drafts draft(Office office, String name) throws IOException {
        return Drafts.of(office).get(BATCH + name);
    }

    private static String text(Path page) throws IOException {
        return Drafts.text(Files.readString(page));
    }

    private static String page(Office office) throws IOException {
        return text(office.send().resolve("index.html"));
    }

    @Test
    void aBuyerWithoutAnOfferGetsThePapersAndThePriceIsSaidToBeUnknown() throws IOException {
        Office office = office();
        Path offers = office.tables().resolve("offers.csv");
        Files.write(
                offers,
                Files.readAllLines(offers).stream()
                        .filter(l -> !l.contains("Kestrel Certificates"))
                        .toList());
        drop(office, "week", Offices.register(1, 2));

        Drafts draft = draft(office, "J-1-STC.eml");
        assertThat(draft.to()).containsExactly("claims@kestrel.example.com");
        assertThat(draft.text())
                .contains("To Kestrel Certificates,", "Expected by us no price known yet");
        assertThat(new String(draft.files().get("J-1-STC.csv"), StandardCharsets.UTF_8))
                .contains(",Kestrel Certificates,STC,14,no price known yet,");
        assertThat(page(office))
                .contains(
                        "J-1-STC, J-2-STC have no price, because no offer of Kestrel Certificates was"
                                + " taken. Enter the current price in the offers table")
                .doesNotContain("no buyer");
        assertThat(text(office.packs().resolve(BATCH + "index.html")))
                .contains("Kestrel Certificates has no offer for STCs in force");
        String ledger = office.root() + "/paperbark.db";
        assertThat(run("lodged", "--ledger", ledger, "J-1").out())
                .contains("14 certificates to Kestrel Certificates");
        assertThat(run("withdraw", "--ledger", ledger, "J-1", "--because", "called off").out())
                .contains("agree with Kestrel Certificates on J-1-STC");
    }

    @Test
    void aPaperWithAnEmptyBoxIsNotSaidToBeSigned() throws IOException {
        Office office = office();
        drop(office, "week", Offices.register(1, 2));
        Path batch = office.packs().resolve(BATCH);
        PageMap.PaperSpan paper = ScannedOffice.paper(batch, "J-1", "stc");
        int page = paper.boxes().get(0).packPage();
        long boxes = paper.boxes().stream().filter(b -> b.packPage() == page).count();
        try (Scanned pile = new Scanned()) {
            for (int i = 0; i < paper.pages(); i++) {
                boolean empty = paper.first() + i == page;
                pile.page(
                        ScannedOffice.pack(batch, "J-1"),
                        paper.first() + i,
                        empty ? List.of() : paper.boxes(),
                        true,
                        false);
            }
            pile.save(office.scans().resolve("pile.pdf"));
        }
        watch(office);

        String said =
                (boxes == 1 ? "1 box seems" : boxes + " boxes seem")
                        + " empty on page "
                        + (page - paper.first() + 1);
        Drafts draft = draft(office, "J-1-STC.eml");
        assertThat(draft.subject()).startsWith("LOOK FIRST: Claim J-1-STC");
        assertThat(draft.text())
                .contains("look first: " + said + " of the STC assignment of J-1.")
                .contains("J-1-stc-assignment.pdf, as it came back: " + said)
                .doesNotContain(", signed");
        assertThat(page(office)).contains("look first: " + said);
        assertThat(text(office.papersPage())).contains("back, with an empty box");
        assertThat(Files.readString(office.papersPage()))
                .contains("href=\"signed/2026-11-23-pile.html\"");
        assertThat(office.signed().resolve("2026-11-23-pile.html")).exists();
    }

    @Test
    void whatComesBackInPartIsSaidOnceAndTheSame() throws IOException {
        Office office = office();
        drop(office, "week", Offices.register(1, 2));
        Path batch = office.packs().resolve(BATCH);
        PageMap.PaperSpan paper = ScannedOffice.paper(batch, "J-1", "stc");
        assertThat(paper.pages()).isGreaterThan(1);
        try (Scanned pile = new Scanned()) {
            pile.page(ScannedOffice.pack(batch, "J-1"), paper.first(), paper.boxes(), true, false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        watch(office);

        assertThat(draft(office, "J-1-STC.eml").text())
                .contains("a signed one is not back with all its pages")
                .contains("as printed, because the signed one is back in part")
                .doesNotContain("not scanned");
        assertThat(page(office))
                .contains(
                        "signed STC assignment of J-1",
                        "2 signed papers, of J-1, J-2",
                        "signed STC assignment of J-2");
    }

    @Test
    void ofAJobThatIsOnlyBookedAgainNothingIsAwaitedOrDue() throws IOException {
        Office office = office();
        drop(office, "week", Offices.register(1, 2));
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, office.packs().resolve(BATCH), "J-2", "stc");
            pile.save(office.scans().resolve("pile.pdf"));
        }
        watch(office);
        assertThat(text(office.papersPage())).contains("J-1 Warranty registration");

        String booked =
                Offices.register(1)
                        .replace("J-1,installed,16/11/2026", "J-1,booked,")
                        .replace("DEMO-1,17/11/2026,DEMO-E1,16/11/2026", "DEMO-1,,DEMO-E1,");
        drop(office, "later", booked);
        assertThat(text(office.packs().resolve("2026-11-23-later/index.html")))
                .contains("Take back");
        assertThat(text(office.papersPage()))
                .doesNotContain("J-1 Warranty registration")
                .contains("J-2 Warranty registration");
        assertThat(Drafts.of(office).keySet())
                .containsExactly(
                        BATCH + "J-2-STC.eml", BATCH + "J-2-owner.eml", BATCH + "maker-dunlin.eml");
        assertThat(draft(office, "maker-dunlin.eml").files().keySet())
                .containsExactly("J-2-warranty-registration.pdf");
        drop(office, "done", Offices.register(1));
        assertThat(text(office.papersPage())).contains("J-1 Warranty registration");
    }

    @Test
    void aDeletedDraftStaysAwayWhereTheOfficeWasCopied() throws IOException {
        Office office = office();
        Files.createDirectories(office.photos().resolve("J-1"));
        Files.write(office.photos().resolve("J-1/plan.pdf"), new byte[] {1, 2});
        drop(office, "week", Offices.register(1, 2));
        Files.delete(office.send().resolve(BATCH + "J-1-STC.eml"));

        Path to = folder.resolve("moved");
        Offices.copy(office.root(), to);
        Office copy = Office.in(to);
        try (Stream<Path> all = Files.walk(copy.root())) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                Files.setLastModifiedTime(file, FileTime.from(NOW.plusSeconds(7)));
            }
        }
        run("drafts", copy.root().toString());
        assertThat(Drafts.of(copy)).containsOnlyKeys(Drafts.of(office).keySet());

        Files.write(copy.photos().resolve("J-1/plan.pdf"), new byte[] {2, 1});
        run("drafts", copy.root().toString());
        assertThat(draft(copy, "J-1-STC.eml").files().get("J-1 - plan.pdf"))
                .isEqualTo(new byte[] {2, 1});
    }

    @Test
    void picturesThatContradictTheJobAreNamedAndFilesByWhatTheyAre() throws IOException {
        Office office = office();
        new Camera().at("2026:09:03 10:15:00").shoot(office.photos().resolve("J-1/tank.jpg"));
        new Camera().at("2026:11:16 10:15:00").shoot(office.photos().resolve("J-1/plate.jpg"));
        new Camera().shoot(office.photos().resolve("J-1/scrap receipt.jpg"));
        new Camera().shoot(office.photos().resolve("J-1/compliance.jpg"));
        drop(office, "week", Offices.register(1, 2));

        String said = "J-1/tank.jpg is of another day, 3 Sep 2026";
        Drafts draft = draft(office, "J-1-STC.eml");
        assertThat(draft.text())
                .contains("look first: " + said + ".")
                .contains(
                        "Certificate: J-1 - compliance.jpg",
                        "Receipt: J-1 - scrap receipt.jpg",
                        "Picture: J-1 - plate.jpg")
                .doesNotContain("plate.jpg is of");
        assertThat(page(office)).contains("look first: " + said);
        assertThat(draft(office, "J-2-STC.eml").text()).doesNotContain("look first");

        Path checked = Files.createDirectories(office.photos().resolve("J-1/checked"));
        Files.move(office.photos().resolve("J-1/tank.jpg"), checked.resolve("tank.jpg"));
        run("drafts", office.root().toString());
        assertThat(draft(office, "J-1-STC.eml").text()).doesNotContain("look first");
    }
}
