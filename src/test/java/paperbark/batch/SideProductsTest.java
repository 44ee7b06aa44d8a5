package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import org.junit.jupiter.api.Test;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;

class SideProductsTest {
    private final SideProducts beside = new SideProducts("week-47.xlsx");

    @Test
    void whatCanBeMadeIsHandedOn() throws IOException {
        assertThat(beside.make("index.html", () -> "page")).contains("page");
        assertThat(beside.findings()).isEmpty();
    }

    @Test
    void whateverGoesWrongInTheMakingIsACheckThatNamesTheFile() throws IOException {
        fails(new IllegalStateException("row 7"));
        fails(new OutOfMemoryError("Java heap space"));
        fails(new StackOverflowError());
        fails(new NoClassDefFoundError("a schema"));
        fails(new UncheckedIOException(new IOException("not a workbook")));
        assertThat(beside.findings())
                .hasSize(5)
                .allSatisfy(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.SIDE_FILE_LACKING);
                            assertThat(f.severity()).isEqualTo(Severity.CHECK);
                            assertThat(f.place().file()).isEqualTo("week-47.xlsx");
                            assertThat(f.fact()).startsWith("summary.xlsx could not be made");
                            assertThat(f.fact()).doesNotContain("row 7");
                        });
    }

    @Test
    void aFullDiskIsNotTheProductsFault() {
        IOException full = new IOException("No space left on device");
        assertThatThrownBy(() -> fails(full)).isSameAs(full);
        UncheckedIOException wrapped = new UncheckedIOException(full);
        assertThatThrownBy(() -> fails(wrapped)).isSameAs(wrapped);
        FileSystemException away = new FileSystemException("/share", null, "Stale file handle");
        assertThatThrownBy(() -> fails(away)).isSameAs(away);
        assertThat(beside.findings()).isEmpty();
    }

    private void fails(Throwable why) throws IOException {
        assertThat(
                        beside.make(
                                "summary.xlsx",
                                () -> {
                                    if (why instanceof IOException disk) {
                                        throw disk;
                                    }
                                    if (why instanceof Error error) {
                                        throw error;
                                    }
                                    throw (RuntimeException) why;
                                }))
                .isEmpty();
    }
}
