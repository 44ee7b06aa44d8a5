package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.disk.Disk;
import paperbark.disk.Rights;
import paperbark.scan.Scanned;
import paperbark.value.Money;

/** What is due to leave the house lies there as a draft, and nothing else does. */
class SendTest {
    private static final String BATCH = "2026-11-23-week/";

    @TempDir private Path folder;
    private Office office;

    /** Three jobs that claim, of which the second's claim is held. */
    @BeforeEach
    void prepare() throws IOException {
        office = Offices.make(folder.resolve("office"));
        drop("week", Offices.register(1, 2, 3).replace("DEMO-2,17/11/2026", ","));
    }

    private void drop(String name, String register) throws IOException {
        Files.writeString(office.intake().resolve(name + ".csv"), register);
        watch();
    }

    private void watch() {
        run("watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    private Program.Run run(String... words) {
        return run(Instant.parse("2026-11-23T02:00:00Z"), words);
    }

    private Program.Run run(Instant at, String... words) {
        Program.Run run = Program.run(at, folder, words);
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10, 12);
        return run;
    }

    private Set<String> names() throws IOException {
        return Drafts.of(office).keySet().stream()
                .map(n -> n.replace(BATCH, ""))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private Drafts draft(String name) throws IOException {
        return Drafts.of(office).get(BATCH + name);
    }

    private String page() throws IOException {
        return Drafts.text(Files.readString(office.send().resolve("index.html")));
    }

    @Test
    void eachGetsWhatIsTheirs() throws IOException {
        assertThat(names())
                .containsExactly(
                        "J-1-STC.eml",
                        "J-1-owner.eml",
                        "J-2-owner.eml",
                        "J-3-STC.eml",
                        "J-3-owner.eml",
                        "maker-dunlin.eml");
        Drafts buyer = draft("J-1-STC.eml");
        assertThat(buyer.to()).containsExactly("claims@kestrel.example.com");
        assertThat(buyer.from()).containsExactly("office@saltmarsh.example.com");
        assertThat(buyer.unsent()).isEqualTo("1");
        assertThat(buyer.subject())
                .isEqualTo(
                        "NOT SIGNED YET: Claim J-1-STC from Saltmarsh Hot Water Pty Ltd: 14 STCs");
        assertThat(buyer.files().keySet())
                .containsExactly("J-1-stc-assignment.pdf", "J-1-STC.csv", "J-1-STC.html");
        assertThat(Drafts.pdf(buyer.files().get("J-1-stc-assignment.pdf")))
                .contains("Kestrel", "Ada Amberwood")
                .doesNotContain("Warranty registration");
        assertThat(draft("J-1-owner.eml").files().keySet())
                .containsExactly("J-1-owner-s-handover.pdf", "J-1-statement-of-benefit.pdf");
        Drafts maker = draft("maker-dunlin.eml");
        assertThat(maker.to()).containsExactly("care@dunlin.example.com");
        assertThat(maker.files().keySet())
                .containsExactly(
                        "J-1-warranty-registration.pdf",
                        "J-2-warranty-registration.pdf",
                        "J-3-warranty-registration.pdf");
        assertThat(maker.text()).contains("2610040004512101").doesNotContain("Amberwood");
        assertThat(Files.readString(office.status())).contains("send/index.html");
    }

    @Test
    void theListSaysWhatIndexAndLedgerSayOfTheClaim() throws IOException {
        String csv =
                new String(draft("J-1-STC.eml").files().get("J-1-STC.csv"), StandardCharsets.UTF_8);
        String[] cells = csv.lines().skip(1).findFirst().orElseThrow().split(",");
        String[] others =
                Files.readAllLines(office.send().resolve(BATCH + "J-3-STC.csv")).get(1).split(",");
        assertThat(office.send().resolve(BATCH + "J-1-STC.csv")).hasContent(csv);

        assertThat(cells[0] + cells[4]).isEqualTo("J-1-STC14");
        // Two claims count, the third is held.
        Money both = Money.parse(cells[5]).toOptional().orElseThrow();
        both = both.plus(Money.parse(others[5]).toOptional().orElseThrow());
        assertThat(run("owed", "--ledger", office.root() + "/paperbark.db").out())
                .contains("Total " + " ".repeat(23) + both);
        String index = Files.readString(office.packs().resolve(BATCH + "index.html"));
        assertThat(index).contains(cells[4] + " STCs").contains(both.toString());
    }

    @Test
    void aSignedAssignmentTakesThePlaceOfThePrintedOne() throws IOException {
        Path batch = office.packs().resolve(BATCH);
        try (Scanned pile = new Scanned()) {
            ScannedOffice.add(pile, batch, "J-1", "stc");
            pile.page(
                    ScannedOffice.pack(batch, "J-3"),
                    ScannedOffice.paper(batch, "J-3", "stc").first(),
                    ScannedOffice.paper(batch, "J-3", "stc").boxes(),
                    true,
                    false);
            pile.save(office.scans().resolve("pile.pdf"));
        }
        watch();

        Drafts signed = draft("J-1-STC.eml");
        assertThat(signed.subject()).startsWith("Claim J-1-STC");
        assertThat(signed.text()).contains("J-1-stc-assignment.pdf, signed");
        assertThat(signed.files().get("J-1-stc-assignment.pdf"))
                .isEqualTo(
                        Files.readAllBytes(office.signed().resolve("J-1/J-1-stc-assignment.pdf")));
        // A page of it is not the paper.
        assertThat(draft("J-3-STC.eml").subject()).startsWith("NOT SIGNED YET");
        assertThat(draft("J-3-STC.eml").text()).contains("the signed one is back in part");
    }

    @Test
    void whatPeoplePutByForAJobJoinsItsBundleAlone() throws IOException {
        Files.createDirectories(office.photos().resolve("J-1"));
        Files.write(office.photos().resolve("J-1/tank.jpg"), new byte[] {1, 2, 3});
        Files.writeString(office.photos().resolve("J-1/notes.txt"), "ask again");
        Files.write(office.photos().resolve("J-1/film.pdf"), new byte[14_500_000]);
        watch();

        assertThat(draft("J-1-STC.eml").files().get("J-1 - tank.jpg"))
                .isEqualTo(new byte[] {1, 2, 3});
        assertThat(draft("J-1-STC.eml").files()).doesNotContainKey("J-1 - film.pdf");
        assertThat(draft("J-1-STC.eml").text())
                .contains("J-1/film.pdf. With it the e-mail would be too large")
                .contains("J-1/notes.txt. It is no picture and no PDF.");
        assertThat(draft("J-3-STC.eml").files()).hasSize(3);
        assertThat(draft("J-1-owner.eml").files()).hasSize(2);
        assertThat(page()).contains("not with it: J-1/film.pdf; J-1/notes.txt");
    }

    @Test
    void aDraftThatWasTakenAwayStaysAwayUntilSomethingInItChanges() throws IOException {
        Files.delete(office.send().resolve(BATCH + "J-1-STC.eml"));
        Files.delete(office.send().resolve(BATCH + "J-3-STC.eml"));
        Files.createDirectories(office.photos().resolve("J-1"));
        Files.write(office.photos().resolve("J-1/tank.jpg"), new byte[] {1});
        watch();
        assertThat(names()).contains("J-1-STC.eml").doesNotContain("J-3-STC.eml");
        assertThat(page()).contains("J-3-STC: 14 STCs");
        assertThat(page()).contains("taken away");

        run("drafts", office.root().toString());
        assertThat(names()).doesNotContain("J-3-STC.eml");
        assertThat(run("drafts", office.root().toString(), "--all").out()).contains("6");
        assertThat(names()).contains("J-3-STC.eml");
    }

    @Test
    void whatIsLodgedOrWithdrawnIsDueNoLonger() throws IOException {
        run("lodged", "--ledger", office.root() + "/paperbark.db", "J-1");
        watch();
        assertThat(names()).contains("J-1-owner.eml").doesNotContain("J-1-STC.eml");
        assertThat(office.send().resolve(BATCH + "J-1-STC.csv")).doesNotExist();

        run(
                "withdraw",
                "--ledger",
                office.root() + "/paperbark.db",
                "J-3",
                "--because",
                "called off");
        watch();
        assertThat(names()).doesNotContain("J-3-owner.eml", "J-3-STC.eml");
        assertThat(draft("maker-dunlin.eml").files()).hasSize(2);
    }

    @Test
    void nothingOfJobsThatAreBookedOrCancelledIsDue() throws IOException {
        drop(
                "later",
                Offices.register(5, 6, 7)
                        .replace("J-5,installed,16/11/2026", "J-5,booked,")
                        .replace("J-6,installed,16/11/2026", "J-6,cancelled,")
                        .replace("J-7,installed", "J-7,no claim")
                        .replace(
                                "7,16/11/2026,yes,Kestrel Certificates,504.00",
                                "7,16/11/2026,no,,"));
        assertThat(Drafts.of(office).keySet().stream().filter(n -> n.contains("later")))
                .containsExactly(
                        "2026-11-23-later/J-7-owner.eml", "2026-11-23-later/maker-dunlin.eml");
    }

    /** The second batch prints what changed; the letters of what stands stay with the first. */
    @Test
    void aCorrectionMovesWhatItPrintsAnew() throws IOException {
        drop("fixed", Offices.register(1).replace("1 Teaspoon Lane", "11 Teaspoon Lane"));
        SortedMap<String, Drafts> all = Drafts.of(office);

        assertThat(all)
                .doesNotContainKeys(BATCH + "J-1-STC.eml", BATCH + "J-1-owner.eml")
                .containsKeys("2026-11-23-fixed/J-1-STC.eml", "2026-11-23-fixed/J-1-owner.eml");
        assertThat(all.get("2026-11-23-fixed/J-1-STC.eml").text()).contains("11 Teaspoon Lane");
        assertThat(all.get(BATCH + "maker-dunlin.eml").files()).hasSize(2);
    }

    @Test
    void addressesThatAreMissingAreToldOnce() throws IOException {
        Path buyers = office.tables().resolve("buyers.csv");
        Files.writeString(
                buyers, Files.readString(buyers).replace("claims@kestrel.example.com", ""));
        watch();

        assertThat(draft("J-1-STC.eml").to()).isEmpty();
        assertThat(page())
                .containsOnlyOnce("Kestrel Certificates has no e-mail in the buyers table.")
                .contains("J-1, J-2, J-3 have no e-mail of the owner in the register.");
    }

    @Test
    void aBrokenLetterCostsItsDraftAlone() throws IOException {
        Files.createDirectories(office.root().resolve("templates/mail"));
        Files.writeString(
                office.root().resolve("templates/mail/owner.ftlh"), "<title>${nothing}</title>");
        drop("more", Offices.register(8));

        assertThat(names()).contains("J-1-STC.eml", "2026-11-23-more/J-8-STC.eml");
        assertThat(Drafts.of(office)).doesNotContainKey("2026-11-23-more/J-8-owner.eml");
        assertThat(Files.readString(office.status()))
                .contains("send/2026-11-23-more/J-8-owner.eml could not be made");
        Program.Run run = run("drafts", office.root().toString());
        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out()).contains("Look:", "J-8-owner.eml could not be made");

        Files.writeString(
                office.root().resolve("templates/mail/owner.ftlh"),
                "<title>Yours &amp; ours, ${jobs[0].job}</title><p>${firm}</p>");
        watch();
        assertThat(draft("J-1-owner.eml").subject()).isEqualTo("Yours & ours, J-1");
        assertThat(Files.readString(office.status())).doesNotContain("could not be made");
    }

    @Test
    void aForgottenJobIsInNoDraft() throws IOException {
        Instant late = Instant.parse("2041-01-01T12:00:00Z");
        run(late, "forget", "J-1", "--office", office.root().toString());
        assertThat(names()).doesNotContain("J-1-STC.eml", "J-1-owner.eml", "maker-dunlin.eml");
        try (Stream<Path> all = Files.walk(office.send())) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                assertThat(Files.readString(file, StandardCharsets.ISO_8859_1))
                        .as(file.toString())
                        .doesNotContain("J-1-");
            }
        }
        assertThat(Files.readString(office.packs().resolve(BATCH + "recipients.json")))
                .doesNotContain("J-1\"", "1 Teaspoon Lane")
                .contains("3 Teaspoon Lane");

        run(late, "drafts", office.root().toString());
        assertThat(draft("maker-dunlin.eml").files().keySet())
                .containsExactly("J-2-warranty-registration.pdf", "J-3-warranty-registration.pdf");
    }

    @Test
    void othersReadTheDraftsWhereTheyReadTheOffice() throws IOException {
        Disk.delete(office.send());
        Rights.keepPrivate(office.root());
        drop("more", Offices.register(8));

        assertThat(Rights.readers(office.send().resolve("2026-11-23-more"))).isEmpty();
        assertThat(
                        Files.getPosixFilePermissions(
                                office.send().resolve("2026-11-23-more/J-8-STC.eml")))
                .isEqualTo(PosixFilePermissions.fromString("rw-------"));
    }

    @Test
    void aClaimThatCanBeLodgedNoLongerIsDueNoLonger() throws IOException {
        String office = this.office.root().toString();
        run(Instant.parse("2027-11-16T02:00:00Z"), "drafts", office);
        assertThat(names()).contains("J-1-STC.eml", "J-1-owner.eml");
        run(Instant.parse("2027-11-17T02:00:00Z"), "drafts", office);
        assertThat(names()).contains("J-1-owner.eml").doesNotContain("J-1-STC.eml");
    }
}
