package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.outside.Browser;
import paperbark.outside.Outside;
import paperbark.value.Money;

/** What the sample week sends to whom, and who gets to see an account number. */
class SendSampleWeekTest {
    private static final Set<String> OWNERS_ACCOUNTS =
            Set.of("00001102", "00001110", "00001124", "00001127", "00001134", "00001140");
    private static final String FIRMS_ACCOUNT = "00000100";

    @TempDir private static Path folder;
    private static Office office;
    private static SortedMap<String, Drafts> drafts;

    /** With an owner's copy of each assignment, which shows what the assignment shows. */
    @BeforeAll
    static void prepare() throws IOException {
        office = Offices.make(folder.resolve("office"));
        Path firm = office.tables().resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm).stripTrailing() + "\nowners copies,yes\n");
        Files.copy(Path.of("input-samples/week-47.csv"), office.intake().resolve("week-47.csv"));
        Program.Run run =
                Program.run(
                        Instant.parse("2026-11-23T02:00:00Z"),
                        folder,
                        "watch",
                        "office",
                        "--once",
                        "--quiet-for",
                        "0");
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(10);
        drafts = Drafts.of(office);
    }

    private static List<Map.Entry<String, Drafts>> those(String pattern) {
        return drafts.entrySet().stream()
                .filter(d -> d.getKey().replaceFirst(".*/", "").matches(pattern))
                .toList();
    }

    @Test
    void thereIsADraftForEveryOneWhoGetsSomething() {
        // 28 jobs are installed, of two makers; 23 claims stand and have a buyer.
        assertThat(names(".*-owner\\.eml")).hasSize(28);
        assertThat(names("maker-.*"))
                .containsExactly(
                        "2026-11-23-week-47/maker-dunlin.eml",
                        "2026-11-23-week-47/maker-ternlight.eml");
        assertThat(names(".*-(STC|VEEC)\\.eml")).hasSize(23);
    }

    private static List<String> names(String pattern) {
        return those(pattern).stream().map(Map.Entry::getKey).toList();
    }

    @Test
    void theBundlesAreTheLedgersClaimsToTheCent() throws IOException {
        Map<String, CSVRecord> told = new TreeMap<>();
        for (Map.Entry<String, Drafts> bundle : those(".*-(STC|VEEC)\\.eml")) {
            byte[] csv =
                    bundle.getValue().files().entrySet().stream()
                            .filter(f -> f.getKey().endsWith(".csv"))
                            .findFirst()
                            .orElseThrow()
                            .getValue();
            String text = new String(csv, StandardCharsets.UTF_8).substring(1);
            try (CSVParser parser =
                    CSVParser.parse(
                            text,
                            CSVFormat.RFC4180
                                    .builder()
                                    .setHeader()
                                    .setSkipHeaderRecord(true)
                                    .get())) {
                CSVRecord first = parser.getRecords().get(0);
                assertThat(told.put(first.get("Claim"), first)).isNull();
            }
        }
        List<ClaimState> claims;
        try (Ledger ledger = Ledger.open(office.ledger())) {
            claims = ledger.claims(LocalDate.of(2026, 11, 23));
        }
        assertThat(told.keySet())
                .containsExactlyInAnyOrderElementsOf(
                        claims.stream()
                                .filter(c -> !c.buyer().isEmpty())
                                .map(ClaimState::reference)
                                .toList());
        for (ClaimState claim : claims.stream().filter(c -> !c.buyer().isEmpty()).toList()) {
            CSVRecord row = told.get(claim.reference());
            assertThat(Integer.parseInt(row.get("Certificates"))).isEqualTo(claim.certificates());
            assertThat(Money.parse(row.get("Expected")).toOptional()).hasValue(claim.expected());
            assertThat(Money.parse(row.get("To owner")).toOptional()).hasValue(claim.toOwner());
            assertThat(row.get("Buyer")).isEqualTo(claim.buyer());
        }
        Money all = claims.stream().map(ClaimState::expected).reduce(Money.ZERO, Money::plus);
        assertThat(Files.readString(office.packs().resolve("2026-11-23-week-47/journal.csv")))
                .isNotEmpty();
        assertThat(
                        Program.run(
                                        Instant.parse("2026-11-23T02:00:00Z"),
                                        folder,
                                        "owed",
                                        "--ledger",
                                        "office/paperbark.db")
                                .out())
                .contains(all.toString());
    }

    @Test
    void accountNumbersGoToBuyersAlone() throws IOException {
        int seen = 0;
        for (Map.Entry<String, Drafts> draft : drafts.entrySet()) {
            String all = draft.getValue().all();
            boolean shows =
                    all.contains(FIRMS_ACCOUNT) || OWNERS_ACCOUNTS.stream().anyMatch(all::contains);
            if (draft.getKey().matches(".*-(STC|VEEC)\\.eml")) {
                seen += shows ? 1 : 0;
            } else {
                assertThat(shows).as(draft.getKey()).isFalse();
            }
        }
        assertThat(seen).as("else the search finds nothing").isGreaterThan(5);
        // Each owner's number is in that owner's bundles alone.
        for (Map.Entry<String, Drafts> draft : drafts.entrySet()) {
            String job = draft.getKey().replaceFirst(".*/SB-(\\d+)-.*", "$1");
            assertThat(
                            OWNERS_ACCOUNTS.stream()
                                    .filter(a -> !a.endsWith(job))
                                    .filter(all(draft.getValue())::contains))
                    .isEmpty();
        }
        // What lies beside the drafts tells of none either.
        for (Path file : Invariants.files(office.send())) {
            String name = file.getFileName().toString();
            if (!name.endsWith(".eml")) {
                String text = Files.readString(file).replaceAll("[\\s-]+", "");
                assertThat(OWNERS_ACCOUNTS.stream().filter(text::contains)).isEmpty();
            }
        }
        assertThat(Files.readString(office.packs().resolve("2026-11-23-week-47/recipients.json")))
                .doesNotContain(OWNERS_ACCOUNTS)
                .doesNotContain("0000 11");
    }

    private static String all(Drafts draft) {
        try {
            return draft.all();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The owner gets the copy where it shows no account, and a word about it where it does. */
    @Test
    void ownersCopiesGoOutUnlessTheyShowAnAccount() {
        List<String> with = new ArrayList<>();
        List<String> without = new ArrayList<>();
        for (Map.Entry<String, Drafts> owner : those(".*-owner\\.eml")) {
            boolean copied =
                    owner.getValue().files().keySet().stream()
                            .anyMatch(f -> f.contains("owner-s-copy"));
            boolean told = owner.getValue().text().contains("It shows an account number");
            (copied ? with : without).add(owner.getKey());
            if (owner.getKey().contains("SB-1102")) {
                assertThat(told).isTrue();
                assertThat(copied).isFalse();
            }
        }
        assertThat(with).isNotEmpty();
        assertThat(without).isNotEmpty();
    }

    @Test
    @Tag("outside")
    void theDraftsAreReadByAnotherProgram() throws IOException {
        Files.writeString(
                folder.resolve("read.py"),
                """
                import email, email.policy, glob, hashlib
                for name in sorted(glob.glob('office/send/*/*.eml')):
                    with open(name, 'rb') as file:
                        draft = email.message_from_binary_file(file, policy=email.policy.default)
                    assert not draft.defects, name
                    print(name.split('/', 2)[2], '|', draft['To'], '|', draft['Subject'], '|', draft['X-Unsent'])
                    for part in list(draft.iter_attachments()):
                        assert not part.defects, name
                        print(' ', part.get_filename(), hashlib.sha256(part.get_payload(decode=True)).hexdigest())
                """);
        Outside.Result result = Outside.run(folder, "python3", "read.py");
        assertThat(result.exitCode()).as(result.err()).isZero();

        StringBuilder expected = new StringBuilder();
        for (Map.Entry<String, Drafts> draft : drafts.entrySet()) {
            Drafts d = draft.getValue();
            String to = d.to().isEmpty() ? "None" : String.join(", ", d.to());
            expected.append(draft.getKey() + " | " + to + " | " + d.subject() + " | 1\n");
            d.files()
                    .forEach(
                            (name, content) ->
                                    expected.append(
                                            "  "
                                                    + name
                                                    + " "
                                                    + DigestUtils.sha256Hex(content)
                                                    + "\n"));
        }
        assertThat(result.out()).isEqualTo(expected.toString());
    }

    /** The page of the drafts and a covering list, by WCAG 2.1, levels A and AA. */
    @Test
    @Tag("outside")
    void thePagesAreForEveryone() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(office.send().resolve("index.html")));
        pages.addAll(
                Invariants.files(office.send()).stream()
                        .filter(f -> f.toString().endsWith("SB-1102-STC.html"))
                        .collect(Collectors.toList()));
        assertThat(pages).hasSize(2);
        try (Browser browser = new Browser(folder)) {
            for (Path page : pages) {
                for (String colours : List.of("light", "dark")) {
                    for (int width : List.of(1400, 320)) {
                        browser.sized(width, 900).in(colours).open(page);
                        assertThat(browser.violations()).as(page + " " + width).isEmpty();
                        assertThat((Long) browser.ask("document.documentElement.scrollWidth"))
                                .isLessThanOrEqualTo(width);
                    }
                }
            }
        }
    }
}
