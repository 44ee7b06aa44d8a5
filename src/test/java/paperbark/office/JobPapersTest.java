package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.job.Job;
import paperbark.job.Register;

/** Which files a job needs, and which of them are there; common practice, no source. */
class JobPapersTest {
    private static Job job(String headings, String cells) {
        return Register.job("Job,Installed on," + headings + "\nT-1,16/11/2026," + cells + "\n");
    }

    private static JobFile file(String name) {
        Path path = Path.of("photos").resolve(name);
        return new JobFile(path, name, JobFile.Kind.of(path), 1000);
    }

    private static List<String> wanted(Job job, String... files) {
        return JobPapers.of(job, Stream.of(files).map(JobPapersTest::file).toList()).stream()
                .map(JobPapers.Wanted::inWords)
                .toList();
    }

    @Test
    void beforeTheHeaterIsInNothingIsWanted() {
        assertThat(wanted(Register.job("Job,Owner\nT-1,Ada Amberwood\n"), "T-1/tank.jpg"))
                .isEmpty();
    }

    @Test
    void ofAHeaterPhotographsAndThePlumbersCertificateAreWanted() {
        assertThat(wanted(job("Owner", "Ada Amberwood"), "T-1/tank.jpg", "T-1/plate.jpg"))
                .containsExactly("Photographs: 2", "Plumbing certificate: none");
    }

    @Test
    void theElectriciansIsWantedWhereThereWasOneOrItsNumberIsKnown() {
        assertThat(wanted(job("Electrician", "Tilly Teatree")))
                .endsWith("Electrical certificate: none")
                .hasSize(3);
        assertThat(wanted(job("Electrical certificate", "E-77")))
                .endsWith("Electrical certificate: none, its number is in the register")
                .hasSize(3);
    }

    @Test
    void theReceiptIsWantedWhereAHeaterIsReplaced() {
        assertThat(wanted(job("Old heater", "gas storage"), "T-1/scrap receipt.jpg"))
                .containsExactly(
                        "Photographs: none",
                        "Plumbing certificate: none",
                        "Receipt for the old heater: 1");
    }

    @Test
    void aCertificateWithoutTradeMayBeOfEither() {
        assertThat(
                        wanted(
                                job("Electrician", "Tilly Teatree"),
                                "T-1/certificate.pdf",
                                "T-1/elec coc.pdf"))
                .containsExactly(
                        "Photographs: none",
                        "Plumbing certificate: 1, its number is not in the register yet",
                        "Electrical certificate: 2, its number is not in the register yet");
    }

    @Test
    void aNumberIsAwaitedOnlyOfACertificateThatIsHereAndHasOne() {
        assertThat(new JobPapers.Wanted("P", 1, Optional.of(false)).awaitsNumber()).isTrue();
        assertThat(new JobPapers.Wanted("P", 0, Optional.of(false)).awaitsNumber()).isFalse();
        assertThat(new JobPapers.Wanted("P", 1, Optional.of(true)).awaitsNumber()).isFalse();
        assertThat(new JobPapers.Wanted("P", 1, Optional.empty()).awaitsNumber()).isFalse();
        assertThat(new JobPapers.Wanted("P", 1, Optional.of(true)).inWords()).isEqualTo("P: 1");
    }

    @ParameterizedTest
    @CsvSource({
        "T-1/plumbing coc.pdf, PLUMBING",
        "T-1/Gas certificate.pdf, PLUMBING",
        "T-1/electrical/coc.pdf, ELECTRICAL",
        "T-1/coc.pdf, ",
    })
    void theTradeIsReadOffTheName(String name, String trade) {
        assertThat(file(name).trade().map(Enum::name)).isEqualTo(Optional.ofNullable(trade));
    }

    @Test
    void onlyAFolderSaysThatAPictureIsChecked() {
        assertThat(file("T-1/Checked/tank.jpg").isChecked()).isTrue();
        assertThat(file("T-1/checked").isChecked()).isFalse();
        assertThat(file("T-1/tank.jpg").isChecked()).isFalse();
    }
}
