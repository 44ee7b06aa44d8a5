package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;

class BatchCheckTest {

    @Test
    void theSameSerialIsFoundWhateverItsWriting() {
        List<Finding> twice =
                Register.read("Job,Tank serial\nA-1,td 22-31\nA-2,TD2231\nA-3,TD2232")
                        .findings()
                        .stream()
                        .filter(f -> f.code().code().equals("serial-twice"))
                        .toList();
        assertThat(twice).extracting(f -> f.job().orElseThrow()).containsExactly("A-1", "A-2");
        assertThat(twice.get(0).fact()).contains("row 3 (A-2)");
        assertThat(twice.get(0).also()).hasSize(1);
    }

    @Test
    void aSerialTwiceInOneRowIsFoundToo() {
        assertThat(Register.read("Job,Tank serial,Heat pump serial\nA-1,TD2231,TD2231").findings())
                .extracting(Finding::fact)
                .contains(
                        "The serial also stands in \"Heat pump serial\" of the same row.",
                        "The serial also stands in \"Tank serial\" of the same row.");
    }

    @Test
    void aJobNumberTwiceIsToldAtBothRows() {
        assertThat(Register.read("Job,Position on site\nA-1,left\na-1,right").codes())
                .containsExactly("job-twice", "job-twice");
    }

    @Test
    void heatersAtOneAddressNeedAPosition() {
        assertThat(Register.read("Job,Position on site\nA-1,\nA-2,").codes())
                .containsExactly("address-twice", "address-twice");
        assertThat(Register.read("Job,Position on site\nA-1,left\nA-2,right").codes()).isEmpty();
    }

    @Test
    void aCertificateBelongsToOneJob() {
        assertThat(
                        Register.read(
                                        "Job,Plumbing certificate,Position on site\nA-1,V 1,left\nA-2,v 1,right")
                                .codes())
                .containsExactly("certificate-twice", "certificate-twice");
        assertThat(
                        Register.read(
                                        "Job,Electrical certificate,Position on site\nA-1,E 1,left\nA-2,E 1,right")
                                .codes())
                .containsExactly("certificate-twice", "certificate-twice");
        assertThat(
                        Register.read(
                                        "Job,Plumbing certificate,Electrical certificate\nA-1,C 1,C 1")
                                .codes())
                .isEmpty();
    }

    @Test
    void aSentenceNamesOnlyAFewRows() {
        StringBuilder csv = new StringBuilder("Job,Tank serial,Position on site");
        for (int i = 1; i <= 500; i++) {
            csv.append("\nA-").append(i).append(",TD2231,place ").append(i);
        }
        List<Finding> twice =
                Register.read(csv.toString()).findings().stream()
                        .filter(f -> f.code().code().equals("serial-twice"))
                        .toList();
        assertThat(twice.size()).isEqualTo(500);
        assertThat(twice.get(0).fact()).endsWith("and 496 more.").hasSizeLessThan(150);
        assertThat(twice.get(0).also()).hasSize(3);
    }
}
