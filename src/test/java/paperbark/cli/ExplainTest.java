package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExplainTest {
    private static final String WEEK = path("input-samples/week-47.xlsx");
    private static final String TABLES = path("input-samples/tables");

    @TempDir private Path directory;

    @Test
    void aJobOfTheSampleWeekShowsInputsStepsRulesAndResultOfBothSchemes() {
        assertThat(explained("SB-1102"))
                .contains(
                        "SB-1102: week-47.xlsx > Week 47 > row 5",
                        "Site postcode 3340 cell W5",
                        "STC: small-scale technology certificate",
                        "Certificates 18",
                        "Last safe day 16 Nov 2027",
                        "STCs for this job 37 x 5 / 10 = 18.5, fractions dropped 18 [5]",
                        "rounding; from memory, not verified; stc/limits.csv, row 10",
                        "VEEC: Victorian energy efficiency certificate",
                        "Certificates 17",
                        "Activity 1C",
                        "invented for the demonstration; veec/factors.csv (the firm's), row 2",
                        "Findings of the job as the register says");
    }

    @Test
    void theOffersStandBelowWithTheirSumsAndTheOneTaken() {
        assertThat(explained("SB-1103"))
                .contains(
                        "Offers for the STCs as the register says",
                        "15 x $36.60 = $549.00",
                        "Pipit and Wren takes only zone 1, 2, 3 left out",
                        "Offer taken highest net; next Pipit and Wren,");
    }

    @Test
    void aBookedJobIsProvisionalAndASchemeThatIsNotClaimedIsSaidToBe() {
        assertThat(explained("SB-1137"))
                .contains(
                        "Visit date 23 Nov 2026",
                        "Provisional until the heater is in and its day is known",
                        "Last safe day open until the heater is installed",
                        "VEEC: Victorian energy efficiency certificate, not claimed for this job");
    }

    @Test
    void aStopIsShownWithItsReasonInPlaceOfTheNumber() {
        assertThat(explained("sb-1115"))
                .contains(
                        "Certificates cannot be worked out",
                        "stop SB-1115: week-47.xlsx > Week 47 >",
                        "[model-unknown]",
                        "Why: Only a listed model earns certificates.");
    }

    @Test
    void overNewYearFiveYearsBecomeFour() {
        assertThat(explained("SB-1102", "--what-if", "date=2027-01-04"))
                .contains(
                        "* Installed on 16 Nov 2026, cell G5 4 Jan 2027, as supposed",
                        "* Old heater removed on 16 Nov 2026, cell AW5 4 Jan 2027, as supposed",
                        "* Years that count installed in 2026 installed in 2027",
                        "* = 5 [4] = 4 [8]",
                        "STC: 18 as the register says, 14 as supposed: 4 fewer",
                        "VEEC: 17 as the register says, 17 as supposed: the same");
    }

    @Test
    void anotherPostcodeIsAnotherZone() {
        assertThat(explained("SB-1101", "--what-if", "postcode=3350"))
                .contains("* Zone 4 5", "STC: 14 as the register says, 13 as supposed: 1 fewer")
                // The register's own zone and count speak of the real postcode.
                .doesNotContain("zone-differs", "count-too-high");
    }

    @Test
    void theStateFollowsAPostcodeAcrossTheBorder() {
        assertThat(explained("SB-1101", "--what-if", "postcode=2640"))
                .contains(
                        "* Site state VIC, cell V4 NSW, as supposed",
                        "* stop veec-not-victoria - The site is in New South Wales.",
                        "VEEC: 7 as the register says, no number as supposed");
    }

    @Test
    void aModelAloneMayBeAnotherMakers() {
        assertThat(explained("SB-1102", "--what-if", "model=D270-A", "--what-if", "old=gas"))
                .contains(
                        "* Maker Ternlight, cell Z5 Dunlin, as supposed",
                        "* Old heater electric storage, cell AQ5 gas storage, as supposed",
                        "* = 1C [2] = 3C");
    }

    @Test
    void aSuppositionMendsACellThatCannotBeRead() {
        assertThat(explained("SB-1113"))
                .contains("Installed on cannot be read", "[date-unreadable]");
        assertThat(explained("SB-1113", "--what-if", "date=19/11/2026"))
                .contains("* Installed on", "19 Nov 2026, as supposed", "as supposed");
    }

    @Test
    void factsThatAreSupposedAsTheyAreChangeNoResult() {
        List<String> marked =
                run("SB-1102", "--what-if", "postcode=3340")
                        .out()
                        .lines()
                        .filter(line -> line.startsWith("*"))
                        .toList();
        assertThat(marked).isNotEmpty().noneMatch(line -> line.contains(" = "));
    }

    @Test
    void linesStayWithinTheirWidth() {
        String working = withoutFindings(run("SB-1101").out());
        String pair =
                withoutFindings(run("SB-1101", "--what-if", "date=2027-01-04,old=wood").out());
        assertThat(working.lines()).allMatch(line -> line.length() <= 100);
        assertThat(pair.lines()).allMatch(line -> line.length() <= 110);
        assertThat(pair.lines().filter(line -> line.contains("As supposed")))
                .isNotEmpty()
                .allMatch(line -> line.indexOf("As supposed") == 70);
    }

    @Test
    void exactlyTheLinesThatDifferCarryTheSign() {
        run("SB-1101", "--what-if", "date=2027-01-04")
                .out()
                .lines()
                .filter(line -> line.length() > 70 && line.matches("[* ] .*"))
                .filter(line -> !line.contains("As supposed") && !line.startsWith("  ["))
                .filter(line -> !line.startsWith("      "))
                .forEach(
                        line ->
                                assertThat(line.startsWith("*"))
                                        .as(line)
                                        .isEqualTo(
                                                !line.substring(28, 68)
                                                        .strip()
                                                        .equals(line.substring(70).strip())));
    }

    @Test
    void machinesGetTheSameAsJson() throws IOException {
        JsonNode json =
                new ObjectMapper()
                        .readTree(run("SB-1102", "--json", "--what-if", "date=2027-01-04").out());
        JsonNode stc = json.at("/register/schemes/0");
        assertThat(json.get("job").asText()).isEqualTo("SB-1102");
        assertThat(stc.get("scheme").asText()).isEqualTo("STC");
        assertThat(stc.get("certificates").asInt()).isEqualTo(18);
        assertThat(stc.get("lastDay").asText()).isEqualTo("2027-11-16");
        assertThat(stc.at("/steps/0/working").asText()).isEqualTo("installed, cell G5");
        assertThat(json.at("/register/schemes/1/demo").asBoolean()).isTrue();
        assertThat(json.at("/supposed/facts/1/from").asText()).isEqualTo("as supposed");
        assertThat(json.at("/differences/0/more").asInt()).isEqualTo(-4);
        assertThat(json.findValuesAsText("sure"))
                .contains("from memory, not verified", "invented for the demonstration");
    }

    @Test
    void withoutSuppositionJsonHasNoSecondSide() throws IOException {
        JsonNode json = new ObjectMapper().readTree(run("SB-1115", "--json").out());
        assertThat(json.has("supposed")).isFalse();
        assertThat(json.get("differences")).isEmpty();
        assertThat(json.at("/register/schemes/0").has("certificates")).isFalse();
        assertThat(json.get("findings").findValuesAsText("code")).contains("model-unknown");
    }

    @Test
    void anUnknownJobEndsWithTwoAndNamesTheNearest() {
        Program.Run run = run("SB-1162");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .contains(
                        "week-47.xlsx has no job \"SB-1162\".",
                        "The nearest number is \"SB-1102\"");
        assertThat(run("Kitchen").err()).contains("run from \"SB-1101\" to \"SB-1142\"");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "datum=2027-01-04 | \"datum\" is no fact that can be supposed.",
                "postcode | \"postcode\" is not of the form name=value.",
                "postcode= | \"postcode\" has no value.",
                "old=gas,old=wood | \"old\" is supposed twice.",
            })
    void aWrongNameListsTheNames(String whatIf, String fact) {
        Program.Run run = run("SB-1101", "--what-if", whatIf);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .contains(fact, "The names are date, postcode, state, maker, model, old.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "date=31/11/2026 | date=31/11/2026: The text is not a day of the calendar.",
                "postcode=33 | postcode=33: The text is not a postcode of four digits.",
                "state=Atlantis | Type one of NSW, ACT, VIC, QLD, SA, WA, TAS, NT.",
                "old=gass | Type \"gas\" if that is meant",
                "maker=Dunln | Did you mean \"Dunlin\"?",
                "model=D270A | Did you mean \"D270-A\"?",
                "maker=Ternlight | The products table has no model \"D270-A\" of Ternlight.",
            })
    void aWrongValueSaysWhatThereIs(String whatIf, String remedy) {
        Program.Run run = run("SB-1101", "--what-if", whatIf);
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains(remedy);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void aRefusedRegisterEndsWithElevenAndTheReason() throws IOException {
        Files.writeString(directory.resolve("week.csv"), "Apples,Pears\n1,2\n");
        Program.Run run =
                Program.run(directory, "explain", "week.csv", "SB-1101", "--tables", TABLES);
        assertThat(run.exitCode()).isEqualTo(11);
        assertThat(run.out()).contains("[headings-not-found]");
    }

    @Test
    void nothingIsWritten() throws IOException {
        explained("SB-1101");
        try (Stream<Path> all = Files.list(directory)) {
            assertThat(all).isEmpty();
        }
    }

    /** The output with each run of blanks made one, so that columns do not matter. */
    private String explained(String job, String... more) {
        Program.Run run = run(job, more);
        assertThat(run.exitCode()).as(run.err()).isZero();
        return run.out().replaceAll(" +", " ");
    }

    private Program.Run run(String job, String... more) {
        List<String> words =
                Stream.concat(
                                Stream.of("explain", WEEK, job, "--as-of", "2026-11-23"),
                                Stream.of(more))
                        .toList();
        return Program.run(directory, words.toArray(String[]::new));
    }

    private static String withoutFindings(String out) {
        return out.substring(0, out.indexOf("Findings of the job"));
    }

    private static String path(String name) {
        return Path.of(name).toAbsolutePath().toString();
    }
}
