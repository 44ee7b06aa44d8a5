package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class ProgressLineTest {
    @Test
    void tellsHowLongItWillTakeOnceThatIsKnown() {
        assertThat(ProgressLine.left(Duration.ofSeconds(9), 10, 1000)).isEmpty();
        assertThat(ProgressLine.left(Duration.ofSeconds(60), 0, 1000)).isEmpty();
        assertThat(ProgressLine.left(Duration.ofSeconds(60), 100, 1000))
                .isEqualTo(", about 9 min left");
        assertThat(ProgressLine.left(Duration.ofSeconds(60), 900, 1000))
                .isEqualTo(", less than a minute left");
        assertThat(ProgressLine.left(Duration.ofSeconds(60), 1000, 1000)).isEmpty();
    }
}
