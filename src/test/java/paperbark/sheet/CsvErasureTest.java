package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CsvErasureTest {
    private final CsvErasure rows = new CsvErasure("J-1"::equals, Set.of());

    private String erased(CsvErasure erasure, String text, Charset charset) throws IOException {
        return erasure.of("week.csv", text.getBytes(charset))
                .map(bytes -> new String(bytes, charset))
                .orElse("nothing");
    }

    @Test
    void onlyTheRowsOfTheJobAreEmptiedAndTheRestStaysToTheByte() throws IOException {
        assertThat(
                        erased(
                                rows,
                                "\ufeffJob;Owner;Town\r\nJ-1;\"A;\"\"B\"\"\r\nC\";x\r\nJ-10; Zoë ;\"y\"\r\n\r\nJ-1;D;E",
                                StandardCharsets.UTF_8))
                .isEqualTo("\ufeffJob;Owner;Town\r\nJ-1;;\r\nJ-10; Zoë ;\"y\"\r\n\r\nJ-1;;");
    }

    @Test
    void theEncodingStays() throws IOException {
        for (Charset charset : Set.of(Charset.forName("windows-1252"), StandardCharsets.UTF_8)) {
            assertThat(erased(rows, "Job\tOwner\nJ-1\tZoë\nJ-2\tZoë\n", charset))
                    .isEqualTo("Job\tOwner\nJ-1\t\nJ-2\tZoë\n");
        }
    }

    @Test
    void utf16KeepsItsMark() throws IOException {
        byte[] file = "\ufeffJob,Owner\nJ-1,Zoë\n".getBytes(StandardCharsets.UTF_16LE);
        assertThat(rows.of("week.csv", file).orElseThrow())
                .isEqualTo("\ufeffJob,Owner\nJ-1,\n".getBytes(StandardCharsets.UTF_16LE));
    }

    @Test
    void onlyNamedColumnsWhereSomeAreNamed() throws IOException {
        CsvErasure owners = new CsvErasure("J-1"::equals, Set.of("Owner"));
        assertThat(erased(owners, "Job,Owner,STCs\nJ-1,A,14\nJ-2,B,9\n", StandardCharsets.UTF_8))
                .isEqualTo("Job,Owner,STCs\nJ-1,,14\nJ-2,B,9\n");
    }

    @Test
    void aLineThatNamesTheDelimiterIsHonouredAndStays() throws IOException {
        assertThat(erased(rows, "sep=^\r\nJob^Owner\r\nJ-1^A, B; C|D\r\n", StandardCharsets.UTF_8))
                .isEqualTo("sep=^\r\nJob^Owner\r\nJ-1^\r\n");
        CsvErasure owners = new CsvErasure("J-1"::equals, Set.of("Owner"));
        assertThat(erased(owners, "sep=;\nJob;Owner;STCs\nJ-1;A;14\n", StandardCharsets.UTF_8))
                .isEqualTo("sep=;\nJob;Owner;STCs\nJ-1;;14\n");
    }

    @Test
    void barsTellFieldsApartToo() throws IOException {
        assertThat(erased(rows, "Job|Owner\nJ-1|A, B\nJ-2|C\n", StandardCharsets.UTF_8))
                .isEqualTo("Job|Owner\nJ-1|\nJ-2|C\n");
    }

    @Test
    void nothingWhereTheJobIsNotThere() throws IOException {
        assertThat(erased(rows, "Job,Owner\nJ-11,A\n", StandardCharsets.UTF_8))
                .isEqualTo("nothing");
    }

    @Test
    void whatCannotBeReadIsNotTakenForAFileWithoutTheJob() {
        for (byte[] unreadable :
                List.of(
                        new byte[] {0, 1, 2, (byte) 0xff},
                        "Job,Owner,Town\nJ-1,\"A,B\nJ-2,C,D\n".getBytes(StandardCharsets.UTF_8))) {
            assertThatThrownBy(() -> rows.of("week.csv", unreadable))
                    .isInstanceOf(IOException.class);
        }
    }
}
