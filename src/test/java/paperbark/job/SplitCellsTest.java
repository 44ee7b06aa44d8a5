package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.SheetReader;
import paperbark.value.Serial;

/** Habits of writing are common practice, no source. */
class SplitCellsTest {
    private static final String DOUBT = "cell-split-doubtful";

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "4 Teaspoon Lane, Ballan VIC 3342 | 4 Teaspoon Lane | Ballan | VIC | 3342",
                "4 Teaspoon Lane, Ballan, Victoria, 3342 | 4 Teaspoon Lane | Ballan | VIC | 3342",
                "4 Teaspoon Lane, BALLAN 3342 Vic. | 4 Teaspoon Lane | BALLAN | VIC | 3342",
                "Unit 3, 12 Teaspoon Lane, Ballan VIC 3342, Australia | Unit 3, 12 Teaspoon Lane | Ballan | VIC | 3342",
                "3/12 Teaspoon Lane, Ballan VIC 3342 | 3/12 Teaspoon Lane | Ballan | VIC | 3342",
                "Lot 7 Teaspoon Lane, Ballan VIC 3342 | Lot 7 Teaspoon Lane | Ballan | VIC | 3342",
                "'Wren Park', 120 Teaspoon Lane, Mount Gambier, South Australia 5290 | 'Wren Park', 120 Teaspoon Lane | Mount Gambier | SA | 5290",
            })
    void anAddressWithCommasIsTakenApartAndShown(
            String cell, String street, String suburb, String state, String postcode) {
        Register.Result read = Register.read("Site address in one cell\n\"" + cell + "\"");

        assertThat(read.jobs().get(0).site().address())
                .hasToString(street + ", " + suburb + " " + state + " " + postcode);
        Finding note = read.only("cell-split");
        assertThat(note.severity()).isEqualTo(Severity.NOTE);
        assertThat(note.where()).isEqualTo("week.csv > A2 \"Site address in one cell\"");
        assertThat(note.seen()).startsWith(cell.substring(0, 20));
        assertThat(note.fact()).contains("Site suburb \"" + suburb + "\"");
        assertThat(read.codes()).doesNotContain(DOUBT);
    }

    @Test
    void anAddressWithoutCommasEndsItsStreetAtTheWordForAStreetAndIsACheck() {
        Register.Result read =
                Register.read("Site address in one cell\n12 St Teaspoon Rd Ballan VIC 3342");

        assertThat(read.jobs().get(0).site().address())
                .hasToString("12 St Teaspoon Rd, Ballan VIC 3342");
        assertThat(read.only(DOUBT).fact())
                .isEqualTo(
                        "The cell was read as Site street \"12 St Teaspoon Rd\", Site suburb \"Ballan\","
                                + " Site state \"VIC\", Site postcode \"3342\", but no comma parts street and suburb.");
        assertThat(read.only(DOUBT).severity()).isEqualTo(Severity.CHECK);
    }

    @Test
    void anAddressThatCannotBeTakenApartIsOneStopOnItsCell() {
        Register.Result read = Register.read("Site address in one cell\nat the mill VIC 3342");

        Finding stop = read.only("cell-not-split");
        assertThat(stop.severity()).isEqualTo(Severity.STOP);
        assertThat(stop.where()).contains("A2");
        assertThat(read.jobs().get(0).site().address().isUnknown()).isTrue();
        assertThat(read.codes()).doesNotContain("fact-missing");
    }

    @Test
    void theStateOfEveryRowServesAnAddressWithoutOne() {
        Register.Result read =
                Register.read(
                        "site-state,,VIC",
                        "Site address in one cell\n\"4 Teaspoon Lane, Ballan 3342\"");

        assertThat(read.jobs().get(0).site().address())
                .hasToString("4 Teaspoon Lane, Ballan VIC 3342");
    }

    @Test
    void thePostcodeOfAnAddressInOneCellIsCheckedAgainstItsState() {
        Register.Result read =
                Register.read("Site address in one cell\n\"4 Teaspoon Lane, Ballan SA 3342\"");

        assertThat(read.only("postcode-of-other-state").where()).contains("A2");
    }

    @Test
    void aPostOfficeBoxIsTheStreetOfThePost() {
        Register.Result read =
                Register.read("Postal address in one cell\nPO Box 12 Ballan VIC 3342");

        assertThat(read.jobs().get(0).owner().postal()).hasToString("PO Box 12, Ballan VIC 3342");
        assertThat(read.codes()).doesNotContain(DOUBT);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Alma Heron | Alma Heron | '' | '' | sure",
                "Heron, Alma | Alma Heron | '' | '' | sure",
                "van Heron, Alma | Alma van Heron | '' | '' | sure",
                "Alma & Otto Heron | Alma Heron | Otto Heron | '' | sure",
                "Mr A & Mrs O Heron | Mr A Heron | Mrs O Heron | '' | sure",
                "Alma Heron and Otto Wren | Alma Heron | Otto Wren | '' | sure",
                "Heron, Alma & Otto | Alma Heron | Otto Heron | '' | sure",
                "Heron, Alma & Wren, Otto | Alma Heron | Otto Wren | '' | sure",
                "Heron Holdings Pty Ltd, Alma Wren | Heron Holdings Pty Ltd | '' | Alma Wren | sure",
                "Heron & Wren Pty Ltd (Alma Wren) | Heron & Wren Pty Ltd | '' | Alma Wren | sure",
                "Heron & Wren Pty Ltd | Heron & Wren Pty Ltd | '' | '' | sure",
                "Ballan Hall Committee c/- Alma Wren | Ballan Hall Committee | '' | Alma Wren | sure",
                "Ballan Bakery, Alma Heron | Alma Heron Ballan Bakery | '' | '' | doubtful",
                "Mr & Mrs Heron | Mr & Mrs Heron | '' | '' | doubtful",
                "Heron & Wren | Heron & Wren | '' | '' | doubtful",
            })
    void ownersInOneCellAreToldApart(
            String cell, String name, String second, String contact, String how) {
        Register.Result read = Register.read("Owners and contact in one cell\n\"" + cell + "\"");

        Owner owner = read.jobs().get(0).owner();
        assertThat(owner.name()).contains(name);
        assertThat(owner.second().orElse("")).isEqualTo(second);
        assertThat(owner.contact().orElse("")).isEqualTo(contact);
        assertThat(read.codes().contains(DOUBT)).isEqualTo(how.equals("doubtful"));
        if (cell.equals(name)) {
            assertThat(read.codes()).doesNotContain("cell-split");
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ternlight TL-E22-250 | Ternlight | TL-E22-250 | ''",
                "TERNLIGHT - TL-E22-250 | Ternlight | TL-E22-250 | ''",
                "TL-E22-250 (Ternlight) | Ternlight | TL-E22-250 | ''",
                "TL-E22-250 | Ternlight | TL-E22-250 | cell-split-doubtful",
                "Ternlight TL-E99 | Ternlight | TL-E99 | model-unknown",
                "Ternlite TL-E22-250 | Ternlite | TL-E22-250 | maker-unknown",
            })
    void makerAndModelAreTakenApartByTheTables(
            String cell, String maker, String model, String code) {
        Register.Result read = Register.read("Maker and model in one cell\n\"" + cell + "\"");

        Heater heater = read.jobs().get(0).heater();
        assertThat(heater.makerName().orElseThrow()).isEqualToIgnoringCase(maker);
        assertThat(heater.model()).contains(model);
        if (!code.isEmpty()) {
            assertThat(read.only(code).where()).contains("A2");
        }
    }

    @Test
    void aProductThatNoTableKnowsIsOneStopOnItsCell() {
        Register.Result read = Register.read("Maker and model in one cell\nsolar 250");

        assertThat(read.only("cell-not-split").where()).contains("A2");
        assertThat(read.codes()).doesNotContain("maker-unknown", "model-unknown");
    }

    @Test
    void serialsGoToTheTankAndToWhatTheModelHas() {
        Heater solar =
                Register.job(
                                "Maker,Model,Serials in one cell\n"
                                        + "Ternlight,TL-E22-250,T23-100001 / C-778 / C-779")
                        .heater();
        Heater pump =
                Register.job("Maker,Model,Serials in one cell\nDunlin,D270-A,D100001 & HP2001")
                        .heater();

        assertThat(solar.tankSerial().map(Serial::seen)).contains("T23-100001");
        assertThat(solar.collectorSerials())
                .extracting(Serial::seen)
                .containsExactly("C-778", "C-779");
        assertThat(pump.tankSerial().map(Serial::seen)).contains("D100001");
        assertThat(pump.heatPumpSerial().map(Serial::seen)).contains("HP2001");
    }

    @Test
    void wordsBeforeSerialsSayWhatTheyBelongTo() {
        Register.Result read =
                Register.read(
                        "Maker,Model,Serials in one cell\n"
                                + "Ternlight,TL-E22-250,Panel: C-778; Tank: T23-100001");

        Heater heater = read.jobs().get(0).heater();
        assertThat(heater.tankSerial().map(Serial::seen)).contains("T23-100001");
        assertThat(heater.collectorSerials()).extracting(Serial::seen).containsExactly("C-778");
        assertThat(read.codes()).doesNotContain(DOUBT);
    }

    @Test
    void aSecondSerialOfAModelThatNobodyKnowsIsACheck() {
        Register.Result read = Register.read("Model,Serials in one cell\nD999,\"D100001, HP2001\"");

        assertThat(read.only(DOUBT).fact()).contains("the model does not say");
    }

    @Test
    void aColumnOfOneFactComesFirstAndTellsOfAContradiction() {
        Register.Result read =
                Register.read(
                        "Site postcode,Site address in one cell\n"
                                + "3350,\"4 Teaspoon Lane, Ballan VIC 3342\"");

        assertThat(read.jobs().get(0).site().address())
                .hasToString("4 Teaspoon Lane, Ballan VIC 3350");
        assertThat(read.only(DOUBT).where()).contains("A2");
        assertThat(read.only(DOUBT).fact()).contains("B2").contains("3342");
    }

    @Test
    void aListIsWholeWithOneCellForSeveralFacts() {
        String csv =
                "Job,Site address in one cell,Owners and contact in one cell,Maker and model in one cell\n"
                        + "T-1,\"4 Teaspoon Lane, Ballan VIC 3342\",Alma Heron,Dunlin D270-A\n";
        var names = Register.names("");
        var sheet =
                SheetReader.readCsv("week.csv", csv.getBytes(StandardCharsets.UTF_8), names::knows)
                        .result()
                        .orElseThrow();

        assertThat(ColumnMap.of(sheet, names).result()).isPresent();
    }
}
