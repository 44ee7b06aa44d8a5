package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.disk.Hashes;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.value.SchemeName;

/** The sample week through the whole program; three of its jobs where the week is not the point. */
class PrepareTest {
    private static final Progress SILENT = (what, done, of) -> {};

    @TempDir private static Path directory;
    private static Outcome outcome;
    private static Path folder;
    private static Path fromText;

    @BeforeAll
    static void prepare() throws IOException {
        outcome = SampleWeek.outcome();
        folder = outcome.published().orElseThrow();
        Request text = SampleWeek.request(SampleWeek.CSV, directory.resolve("text"));
        Request withCsv =
                new Request(
                        text.register(),
                        text.firm(),
                        text.out(),
                        text.run(),
                        new Request.Extras(false, true, false, false, false),
                        text.ledger());
        fromText = prepared(withCsv).published().orElseThrow();
    }

    private static Outcome prepared(Request request) throws IOException {
        return new Batch(SILENT).prepare(request);
    }

    /**
     * Three jobs of the week: one without a mistake, one with a wrong address, one that is held.
     */
    private static Path fewJobs(String name) throws IOException {
        Path register = directory.resolve(name).resolve("week-47.csv");
        Files.createDirectories(register.getParent());
        return Files.writeString(register, SampleWeek.only("SB-1101", "SB-1109", "SB-1113"));
    }

    @Test
    void everyMistakeOfTheSampleWeekIsFoundAndNothingElse() {
        Map<String, String> codes =
                outcome.findings().stream()
                        .filter(f -> f.job().isPresent())
                        .collect(
                                Collectors.groupingBy(
                                        f -> f.job().orElseThrow(),
                                        TreeMap::new,
                                        Collectors.mapping(
                                                f -> f.code().code(), Collectors.joining(" "))));
        assertThat(codes)
                .containsExactlyInAnyOrderEntriesOf(
                        Map.ofEntries(
                                Map.entry("SB-1104", "serial-twice"),
                                Map.entry("SB-1106", "digits-lost"),
                                Map.entry("SB-1107", "leading-zero-lost"),
                                Map.entry("SB-1109", "abn-wrong gst-owner-registered email-wrong"),
                                Map.entry("SB-1111", "signed-before-installed"),
                                Map.entry("SB-1113", "date-unreadable"),
                                Map.entry("SB-1114", "postcode-of-other-state"),
                                Map.entry("SB-1115", "model-unknown"),
                                Map.entry("SB-1116", "litres-differ licence-expired"),
                                Map.entry("SB-1117", "fact-missing serial-twice"),
                                Map.entry("SB-1118", "certificate-number-missing"),
                                Map.entry("SB-1119", "zone-differs"),
                                Map.entry("SB-1120", "count-too-high"),
                                Map.entry("SB-1121", "gst-owner-registered heat-pump-too-large"),
                                Map.entry("SB-1122", "claim-closing"),
                                Map.entry("SB-1123", "leading-zero-lost"),
                                Map.entry("SB-1125", "correction"),
                                Map.entry("SB-1127", "gst-owner-registered")));
    }

    @Test
    void theWeekIsPublishedWithSomeJobsHeld() {
        assertThat(outcome.ending()).isEqualTo(Ending.HELD);
        assertThat(outcome.counts().jobs()).isEqualTo(40);
        assertThat(outcome.counts().packs()).isEqualTo(40);
        assertThat(outcome.counts().heldJobs()).isEqualTo(13);
        assertThat(folder).hasFileName("2026-11-23-week-47");
    }

    @Test
    void certificatesAreThoseOfThePapersThatGoOut() throws IOException {
        int stcs = 0;
        for (JsonNode job : manifest(folder).get("jobs")) {
            stcs += job.get("certificates").path("STC").asInt();
        }
        assertThat(outcome.counts().certificates()).containsEntry(SchemeName.STC, stcs);
    }

    @Test
    void theManifestNamesEveryFileWithItsHash() throws IOException {
        JsonNode outputs = manifest(folder).get("outputs");
        Map<String, String> found = Hashes.ofAll(folder);
        found.remove("manifest.json");
        assertThat(found).hasSize(outputs.size());
        found.forEach(
                (name, hash) ->
                        assertThat(outputs.get(name).get("sha256").asText()).isEqualTo(hash));
        JsonNode sources = manifest(folder).get("sources");
        assertThat(sources.get("register").get("week-47.xlsx").asText())
                .isEqualTo(Hashes.sha256(SampleWeek.XLSX));
        assertThat(sources.get("tables").get("products.csv").asText())
                .isEqualTo(Hashes.sha256(SampleWeek.TABLES.resolve("products.csv")));
        assertThat(sources.get("rules").size()).isGreaterThan(10);
        assertThat(manifest(folder).get("rules").size()).isGreaterThan(5);
    }

    @Test
    void twoRunsGiveTheSameBytes() throws IOException {
        Outcome again = prepared(SampleWeek.request(SampleWeek.XLSX, directory.resolve("second")));
        assertThat(Hashes.ofAll(again.published().orElseThrow())).isEqualTo(Hashes.ofAll(folder));
    }

    @Test
    void theSameWeekAgainIsRecognised() throws IOException {
        Outcome again = prepared(SampleWeek.request(SampleWeek.XLSX, folder.getParent()));
        assertThat(again.ending()).isEqualTo(Ending.ALREADY);
        assertThat(again.published()).contains(folder);
        try (Stream<Path> all = Files.list(folder.getParent())) {
            assertThat(all).containsExactly(folder);
        }
    }

    @Test
    void aWeekWithALostPackIsPreparedAnew() throws IOException {
        Request request = SampleWeek.request(fewJobs("lost"), directory.resolve("lost-packs"));
        Outcome first = prepared(request);
        Files.delete(first.published().orElseThrow().resolve("packs/SB-1101.pdf"));
        Outcome second = prepared(request);
        assertThat(second.ending()).isEqualTo(Ending.HELD);
        assertThat(second.published().orElseThrow()).hasFileName("2026-11-23-week-47-2");
    }

    @Test
    void tablesBehindALinkCountAndLeftoversOfEditorsDoNot() throws IOException {
        Path tables = Files.createDirectories(directory.resolve("linked"));
        Path real = Files.writeString(directory.resolve("real-offers.csv"), "a");
        Files.createSymbolicLink(tables.resolve("offers.csv"), real);
        Files.writeString(tables.resolve(".~lock.offers.csv#"), "x");
        Files.writeString(tables.resolve("~$offers.xlsx"), "x");
        assertThat(Hashes.ofAll(tables)).containsOnlyKeys("offers.csv");
        Map<String, String> before = Hashes.ofAll(tables);
        Files.writeString(real, "b");
        assertThat(Hashes.ofAll(tables)).isNotEqualTo(before);
    }

    @Test
    void aCorrectedWeekGetsAFolderOfItsOwn() throws IOException {
        Path register = fewJobs("corrected");
        Request request = SampleWeek.request(register, directory.resolve("corrected-packs"));
        Outcome first = prepared(request);
        String text = Files.readString(register);
        assertThat(text).contains("desk@example,com");
        Files.writeString(register, text.replace("desk@example,com", "desk@example.com"));
        Outcome second = prepared(request);
        assertThat(first.findings()).extracting(Finding::code).contains(FindingCode.EMAIL_WRONG);
        assertThat(first.published().orElseThrow()).hasFileName("2026-11-23-week-47");
        assertThat(second.published().orElseThrow()).hasFileName("2026-11-23-week-47-2");
        assertThat(second.findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.EMAIL_WRONG);
    }

    @Test
    void theRegisterItselfIsNeverTouched() throws IOException {
        Path own = directory.resolve("own").resolve("week-47.xlsx");
        Files.createDirectories(own.getParent());
        Files.copy(SampleWeek.XLSX, own);
        own.toFile().setLastModified(1_700_000_000_000L);
        new Batch(SILENT).check(SampleWeek.request(own, own.getParent()));
        assertThat(Hashes.sha256(own)).isEqualTo(Hashes.sha256(SampleWeek.XLSX));
        assertThat(own.toFile().lastModified()).isEqualTo(1_700_000_000_000L);
        assertThat(own.resolveSibling("week-47-checked.xlsx")).isRegularFile();
    }

    @Test
    void theSheetsAreWrittenAsCsvOnRequestAndNamedInTheManifest() throws IOException {
        assertThat(folder.resolve("summary-csv")).doesNotExist();
        assertThat(Files.readString(fromText.resolve("summary-csv/jobs.csv"))).contains("SB-1101");
        assertThat(manifest(fromText).get("outputs").has("summary-csv/every-offer.csv")).isTrue();
        assertThat(manifest(fromText).get("sources").get("csv").asBoolean()).isTrue();
    }

    @Test
    void everyPackIsInThePrintRunAndEachPaperStartsOnAFreshSheet() throws IOException {
        try (PDDocument run = Loader.loadPDF(folder.resolve("print-run.pdf").toFile())) {
            assertThat(run.getNumberOfPages() % 2).isZero();
        }
        for (JsonNode job : manifest(folder).get("jobs")) {
            assertThat(folder.resolve(job.get("pack").asText())).isRegularFile();
        }
    }

    @Test
    void nothingIsLeftUnderAHiddenName() throws IOException {
        try (Stream<Path> all = Files.list(folder.getParent())) {
            assertThat(all.map(p -> p.getFileName().toString())).noneMatch(n -> n.startsWith("."));
        }
    }

    @Test
    void bankDetailsAndEmailsStayOutOfThePageAndTheManifest() throws IOException {
        for (String file : List.of("index.html", "manifest.json")) {
            assertThat(Files.readString(folder.resolve(file)))
                    .doesNotContain("000-000", "0000 1102", "ada@example.com", "desk@example");
        }
    }

    @Test
    void theTextRegisterGivesTheSameClaims() throws IOException {
        Map<String, String> claims = claims(fromText);
        Map<String, String> expected = claims(folder);
        assertThat(claims).isEqualTo(expected);
    }

    private static Map<String, String> claims(Path batch) throws IOException {
        Map<String, String> claims = new TreeMap<>();
        manifest(batch)
                .get("jobs")
                .forEach(
                        job ->
                                claims.put(
                                        job.get("job").asText(),
                                        job.get("certificates").toString()));
        return claims;
    }

    private static JsonNode manifest(Path batch) throws IOException {
        return new ObjectMapper()
                .readTree(Files.readString(batch.resolve("manifest.json"), StandardCharsets.UTF_8));
    }
}
