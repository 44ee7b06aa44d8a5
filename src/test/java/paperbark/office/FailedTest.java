package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** What is said of something that could not be made. */
class FailedTest {
    @Test
    void aFailureSpeaksForItselfAndWithoutWordsIsNotCalledByItsClass() {
        assertThat(Failed.because(new IOException("No space left."))).isEqualTo("No space left.");
        assertThat(Failed.because(new IOException())).isEqualTo("the disk gives no reason");
        assertThat(Failed.because(new IllegalStateException(" ")))
                .isEqualTo("the program failed and gives no reason; please report it");
    }
}
