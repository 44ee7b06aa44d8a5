package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.value.Money;
import paperbark.value.SchemeName;

class RowsOfJobTest {
    private static final String ROW_EACH = "row-a-certificate,,yes";
    private static final String HEADINGS =
            "Job,Certificates of this row,Number of these certificates,Benefit for these certificates,Old maker,Owner\n";

    @Test
    void twoRowsWithASchemeEachAreOneJobWithBothClaims() {
        Register.Result read =
                Register.read(
                        ROW_EACH,
                        HEADINGS + "A-1,STC,14,504.00,,Ann\na-1,VEEC,7,462.00,Boobook,Ann");
        assertThat(read.jobs()).hasSize(1);
        Job job = read.jobs().get(0);
        assertThat(job.reference()).isEqualTo("A-1");
        assertThat(job.claim(SchemeName.STC).declaredCount()).contains(14);
        assertThat(job.claim(SchemeName.STC).benefit()).contains(Money.of("504.00"));
        assertThat(job.claim(SchemeName.VEEC).declaredCount()).contains(7);
        assertThat(job.claim(SchemeName.VEEC).benefit()).contains(Money.of("462.00"));
        assertThat(job.oldHeater().orElseThrow().maker()).contains("Boobook");
        assertThat(read.codes()).doesNotContain("job-twice", "address-twice", "rows-disagree");
    }

    @Test
    void rowsOfOneJobThatContradictEachOtherAreBothNamed() {
        Finding finding =
                Register.read(ROW_EACH, HEADINGS + "A-1,STC,14,504.00,,Ann\nA-1,VEEC,7,462.00,,Bob")
                        .only("rows-disagree");
        assertThat(finding.fact()).contains("Rows 2 and 3", "\"Owner\"");
        assertThat(finding.also()).hasSize(1);
        assertThat(finding.stops()).isTrue();
    }

    @Test
    void twoRowsWithTheSameSchemeStayTwoJobs() {
        assertThat(
                        Register.read(
                                        ROW_EACH,
                                        HEADINGS + "A-1,STC,14,504.00,,Ann\nA-1,STC,14,504.00,,Ann")
                                .codes())
                .contains("job-twice");
    }

    @Test
    void withoutTheLineTheCauseIsToldOnceAndEachRowOnlySaysThatItsNumberStandsTwice() {
        Register.Result read =
                Register.read(
                        "",
                        "Job,Claim STCs,Claim VEECs,Tank serial\n"
                                + "A-1,yes,no,TD-1001\nA-1,no,yes,TD-1001\n"
                                + "A-2,yes,no,TD-1002\nA-2,no,yes,TD-1002");
        assertThat(read.only("row-a-certificate").fact())
                .isEqualTo("2 jobs stand on two rows each, one a scheme, such as A-1.");
        assertThat(read.codes())
                .doesNotContain("serial-twice")
                .filteredOn(code -> code.equals("job-twice"))
                .hasSize(4);
    }

    @Test
    void aSchemeThatNobodyKnowsHoldsTheClaims() {
        Register.Result read =
                Register.read("", HEADINGS + "A-1,white certificates,14,504.00,,Ann");
        assertThat(read.only("choice-unknown").stops()).isTrue();
        assertThat(read.jobs().get(0).hasClaims()).isTrue();
    }

    @Test
    void aFindingOnTheCertificatesOfALaterRowPointsAtTheCellThatSaysIt() {
        Job job =
                Register.read(ROW_EACH, HEADINGS + "A-1,STC,14,504.00,,Ann\nA-1,VEEC,8,,,Ann")
                        .jobs()
                        .get(0);
        assertThat(job.origin().cell(Field.of(SchemeName.STC, ClaimFact.COUNT)).cellAddress())
                .isEqualTo("C2");
        assertThat(job.origin().cell(Field.of(SchemeName.VEEC, ClaimFact.COUNT)).cellAddress())
                .isEqualTo("C3");
        assertThat(job.origin().from(Field.of(SchemeName.VEEC, ClaimFact.COUNT)))
                .isEqualTo("cell C3");
    }

    @Test
    void aBenefitThatALaterRowLacksIsMissedThere() {
        Finding finding =
                Register.read(
                                ROW_EACH,
                                HEADINGS.strip()
                                        + ",Stage\nA-1,STC,14,504.00,,Ann,installed\nA-1,VEEC,7,,,Ann,")
                        .only("benefit-missing");
        assertThat(finding.place().cellAddress()).isEqualTo("D3");
    }

    @Test
    void aCellThatCompletesAnotherRowIsToldOnceAndWhereItStands() {
        Finding finding =
                Register.read(
                                ROW_EACH,
                                HEADINGS.strip()
                                        + ",Owner's phone\nA-1,STC,14,504.00,,Ann,\na-1,VEEC,7,462.00,,Ann,12")
                        .only("phone-wrong");
        assertThat(finding.place().cellAddress()).isEqualTo("G3");
        assertThat(finding.job()).contains("A-1");
    }

    @Test
    void certificatesOfNoSchemeHoldTheJob() {
        Register.Result read =
                Register.read(ROW_EACH, HEADINGS + "A-1,STC,14,504.00,,Ann\nA-1,,7,462.00,,Ann");
        Finding finding = read.only("choice-unknown");
        assertThat(finding.stops()).isTrue();
        assertThat(finding.place().cellAddress()).isEqualTo("B3");
        assertThat(finding.job()).contains("A-1");
    }
}
