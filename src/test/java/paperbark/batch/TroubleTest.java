package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.AccessDeniedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the world did wrong, in words for people. */
class TroubleTest {

    @ParameterizedTest
    @CsvSource({
        "/office/.status.html-4711.part, /office/status.html.",
        "/office/packs/.2026-11-23-one-4711/packs/J-1.pdf, /office/packs/2026-11-23-one/packs/J-1.pdf.",
        "/office/.hidden/week.csv, /office/.hidden/week.csv."
    })
    void aHiddenFileIsNamedAsWhatItIsToBecome(String file, String named) {
        assertThat(Trouble.of(new AccessDeniedException(file)).orElseThrow().said())
                .startsWith("No permission: " + named);
    }

    @Test
    void noEndingSaysThatNothingWasPublishedWhereABatchMayBeVisible() {
        for (Ending ending : new Ending[] {Ending.FAULT, Ending.DISK, Ending.UNTRUSTED}) {
            assertThat(ending.sentence()).doesNotContain("published");
        }
    }
}
