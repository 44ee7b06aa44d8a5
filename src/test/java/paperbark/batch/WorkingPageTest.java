package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import paperbark.output.CaseFile;
import paperbark.output.PaperKind;
import paperbark.output.paper.Packs;

/**
 * Every working page of the sample week, read off the paper and redone with a pocket calculator.
 */
class WorkingPageTest {
    private static final Pattern CELL =
            Pattern.compile("(.*?),? \\(?cell ([A-Z]+)([0-9]+)\\)?(.*)");
    private static final Pattern RULE_PLACE =
            Pattern.compile(".*\\. (\\S+\\.csv)( \\(the firm's\\))?, row ([0-9]+)(.*)");
    private static final DateTimeFormatter IN_REGISTER = DateTimeFormatter.ofPattern("d/M/yyyy");
    private static final String NEIGHBOURS = "In the neighbouring years";

    /** All four activities, all zones, booked and installed, the year before, and two stops. */
    private static final Set<String> JOBS =
            Set.of(
                    "SB-1102", "SB-1103", "SB-1106", "SB-1110", "SB-1114", "SB-1115", "SB-1121",
                    "SB-1122", "SB-1123", "SB-1124", "SB-1127", "SB-1131");

    /** What is printed, by job and scheme. */
    private static final Map<String, PrintedWorking.Scheme> PRINTED = new TreeMap<>();

    private static List<CSVRecord> register = List.of();

    @BeforeAll
    static void printAndRead() throws IOException {
        Request request = SampleWeek.request(SampleWeek.CSV, Path.of("target"));
        Inputs inputs = Inputs.read(request).result().orElseThrow();
        Cases cases = new Cases(inputs, "week", request);
        Packs packs = new Packs(Optional.empty());
        inputs.jobs().stream()
                .filter(job -> JOBS.contains(job.reference()))
                .forEach(
                        job -> {
                            CaseFile all = cases.of(job, "pack.pdf");
                            PrintedWorking.of(packs.make(workingOnly(all), List.of()).pdf())
                                    .forEach(s -> PRINTED.put(job.reference() + " " + s.name(), s));
                        });
        register = records(SampleWeek.CSV);
    }

    private static CaseFile workingOnly(CaseFile c) {
        return c.withPapers(
                c.papers().stream().filter(p -> p.kind() == PaperKind.WORKING).toList());
    }

    private static List<CSVRecord> records(Path file) throws IOException {
        try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, CSVFormat.RFC4180)) {
            return parser.getRecords();
        }
    }

    private static Map<String, PrintedWorking.Scheme> printed(String scheme) {
        Map<String, PrintedWorking.Scheme> counted = new TreeMap<>(PRINTED);
        counted.keySet().removeIf(k -> !k.endsWith(scheme) || !isCounted(counted.get(k)));
        return counted;
    }

    private static boolean isCounted(PrintedWorking.Scheme scheme) {
        return scheme.headline().get(0).startsWith("Result: ");
    }

    private static String count(PrintedWorking.Scheme scheme) {
        return scheme.headline().get(0).replaceAll("Result: (\\d+) certificates.*", "$1");
    }

    @Test
    void thePagesCoverAllActivitiesAndZones() {
        assertThat(printed("STC")).hasSize(10);
        assertThat(printed("STC").values().stream().map(s -> s.step("STC zone").result()))
                .contains("zone 1", "zone 2", "zone 3", "zone 4", "zone 5");
        assertThat(printed("VEEC").values().stream().map(s -> s.step("Activity").result()))
                .hasSize(6)
                .contains("1C", "1D", "3C", "3D");
    }

    @Test
    void everyPrintedSumIsRight() {
        List<String> redone = new ArrayList<>();
        PRINTED.forEach(
                (job, scheme) ->
                        scheme.steps().stream()
                                .flatMap(s -> Clerk.equations(s.working()).stream())
                                .forEach(
                                        e -> {
                                            assertThat(e.redone())
                                                    .as(job + ": " + e.sum())
                                                    .isEqualByComparingTo(e.printed());
                                            redone.add(e.sum());
                                        }));
        assertThat(redone).hasSizeGreaterThan(40);
    }

    @Test
    void theStcsFollowFromTheListedFigureAndTheYearsPrintedAbove() {
        printed("STC")
                .forEach(
                        (job, stc) -> {
                            Clerk.Equation sum = only(stc.step("STCs for this job"));
                            String inputs =
                                    stc.step("STCs over ten years").result()
                                            + " x "
                                            + stc.step("Years that count").result()
                                            + " / 10";
                            assertThat(sum.sum()).as(job).isEqualTo(inputs);
                            assertThat(sum.whole().toString())
                                    .as(job)
                                    .isEqualTo(stc.step("STCs for this job").result())
                                    .isEqualTo(count(stc));
                        });
    }

    @Test
    void theVeecsFollowFromTheEnergiesAndTheTonnesPrintedAbove() {
        printed("VEEC")
                .forEach(
                        (job, veec) -> {
                            PrintedWorking.Step tonnes = veec.step("Tonnes of CO2-e");
                            Clerk.Equation sum = only(tonnes);
                            assertThat(tonnes.result())
                                    .as(job)
                                    .isEqualTo(
                                            sum.redone().stripTrailingZeros().toPlainString()
                                                    + " t");
                            Matcher energies =
                                    Pattern.compile("Bs ([0-9.]+), Be ([0-9.]+) GJ a year")
                                            .matcher(veec.step("Energies of the product").result());
                            assertThat(energies.matches()).as(job).isTrue();
                            assertThat(sum.sum())
                                    .as(job)
                                    .contains(" x " + energies.group(1))
                                    .contains(" x " + energies.group(2));
                            PrintedWorking.Step count = veec.step("VEECs for this job");
                            assertThat(count.working()).as(job).startsWith(tonnes.result() + ", ");
                            BigDecimal exact = new BigDecimal(tonnes.result().replace(" t", ""));
                            assertThat(Clerk.whole(exact, count.working()).toString())
                                    .as(job)
                                    .isEqualTo(count.result())
                                    .isEqualTo(count(veec));
                        });
    }

    private static Clerk.Equation only(PrintedWorking.Step step) {
        List<Clerk.Equation> equations = Clerk.equations(step.working());
        assertThat(equations).as(step.working()).hasSize(1);
        return equations.get(0);
    }

    @Test
    void howFarTheNumberMovesInTheNeighbouringYearsIsPrintedAndRight() {
        PRINTED.forEach(
                (job, scheme) -> {
                    if (!isCounted(scheme)) {
                        return;
                    }
                    PrintedWorking.Step step = scheme.step(NEIGHBOURS);
                    List<String> counts =
                            Clerk.equations(step.working()).stream()
                                    .map(e -> e.whole().toString())
                                    .toList();
                    List<String> printed =
                            Pattern.compile(", ")
                                    .splitAsStream(step.result())
                                    .map(c -> c.replaceAll(" (in|on) .*", ""))
                                    .filter(c -> !c.equals("not known"))
                                    .toList();
                    assertThat(printed).as(job + step).isEqualTo(counts);
                    int year = Clerk.day(scheme.steps().get(0).result()).getYear();
                    assertThat(step.result())
                            .as(job)
                            .contains(year - 1 + "")
                            .contains(year + 1 + "");
                });
    }

    @Test
    void theLastSafeDayFollowsFromTheDayPrintedAbove() {
        List<String> redone = new ArrayList<>();
        PRINTED.forEach(
                (job, scheme) -> {
                    String label = "Last safe day for creating " + scheme.name() + "s";
                    if (!scheme.has(label)) {
                        return;
                    }
                    PrintedWorking.Step step = scheme.step(label);
                    LocalDate day = Clerk.day(scheme.steps().get(0).result());
                    String from =
                            scheme.name().equals("STC")
                                    ? Clerk.day(day) + " + "
                                    : "end of " + day.getYear() + " + ";
                    assertThat(step.working()).as(job).startsWith(from);
                    int months =
                            Integer.parseInt(
                                    step.working().substring(from.length()).replace(" months", ""));
                    LocalDate last =
                            scheme.name().equals("STC")
                                    ? day.plusMonths(months)
                                    : LocalDate.of(day.getYear() + 1, 1, 1)
                                            .plusMonths(months)
                                            .minusDays(1);
                    assertThat(step.result()).as(job).isEqualTo(Clerk.day(last));
                    redone.add(job);
                });
        assertThat(redone).hasSizeGreaterThan(10);
    }

    @Test
    void everyInputIsPrintedWithTheCellOfTheRegisterThatHoldsIt() {
        printed("STC").forEach((job, stc) -> inputs(job, stc, "STC zone", "STCs over ten years"));
        printed("VEEC")
                .forEach(
                        (job, veec) ->
                                inputs(job, veec, "Climate zone", "Energies of the product"));
    }

    private static void inputs(
            String job, PrintedWorking.Scheme scheme, String zone, String model) {
        PrintedWorking.Step day = scheme.steps().get(0);
        assertThat(LocalDate.parse(inRegister(job, day), IN_REGISTER))
                .as(job)
                .isEqualTo(Clerk.day(day.result()));
        String postcode = scheme.step(zone).working().replaceAll("postcode (\\d{4}), .*", "$1");
        assertThat(postcode).as(job).isEqualTo(inRegister(job, scheme.step(zone)));
        assertThat(scheme.step(model).working())
                .as(job)
                .contains(inRegister(job, scheme.step(model)));
        if (scheme.has("Activity")) {
            assertThat(scheme.step("Activity").working())
                    .as(job)
                    .startsWith(inRegister(job, scheme.step("Activity")) + " replaced (cell ");
        }
    }

    /** The text of the printed cell, which must lie in the row of the job. */
    private static String inRegister(String job, PrintedWorking.Step step) {
        Matcher cell = CELL.matcher(step.working());
        assertThat(cell.matches()).as(job + ": " + step).isTrue();
        CSVRecord row = register.get(Integer.parseInt(cell.group(3)) - 1);
        assertThat(job).startsWith(row.get(0) + " ");
        int column = 0;
        for (char letter : cell.group(2).toCharArray()) {
            column = 26 * column + letter - 'A' + 1;
        }
        return row.get(column - 1);
    }

    @Test
    void everyRuleNumberLeadsToARuleAndEveryRuleIsUsed() {
        PRINTED.forEach(
                (job, scheme) ->
                        assertThat(
                                        scheme.steps().stream()
                                                .flatMap(s -> s.rules().stream())
                                                .collect(Collectors.toSet()))
                                .as(job)
                                .hasSameSizeAs(scheme.rules())
                                .allSatisfy(
                                        n -> assertThat(n).isBetween(1, scheme.rules().size())));
    }

    @Test
    void howSureWeAreOfARuleIsPrintedAsItsTableSays() {
        Map<String, Integer> seen = new TreeMap<>();
        PRINTED.values().stream()
                .flatMap(scheme -> scheme.rules().stream())
                .forEach(rule -> seen.merge(sure(rule), 1, Integer::sum));

        assertThat(seen).containsOnlyKeys("published", "derived", "memory", "demo", "products");
    }

    /** Looks the printed row up in the table and compares; gives back what the table says. */
    private static String sure(String rule) {
        Matcher place = RULE_PLACE.matcher(rule);
        if (!place.matches()) {
            assertThat(rule).matches(".*\\(the firm's entry\\)\\. products, row [0-9]+: .*");
            return "products";
        }
        String folder =
                place.group(2) == null
                        ? "src/main/resources/rules/"
                        : "input-samples/tables/rules/";
        String confidence = confidence(Path.of(folder + place.group(1)), place.group(3));
        boolean memory = confidence.equals("memory");
        assertThat(rule.contains("(from memory, not verified)")).as(rule).isEqualTo(memory);
        assertThat(rule.endsWith("; read in the source"))
                .as(rule)
                .isEqualTo(confidence.equals("published"));
        assertThat(rule.contains("(derived)")).as(rule).isEqualTo(confidence.equals("derived"));
        assertThat(rule.contains("(invented for the demonstration)"))
                .as(rule)
                .isEqualTo(confidence.equals("demo"));
        return confidence;
    }

    private static String confidence(Path table, String row) {
        try {
            List<String> lines = Files.readAllLines(table);
            List<String> headings = List.of(lines.get(0).split(","));
            CSVRecord cells =
                    CSVParser.parse(lines.get(Integer.parseInt(row) - 1), CSVFormat.RFC4180)
                            .getRecords()
                            .get(0);
            return cells.get(headings.indexOf("confidence"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
