package paperbark.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class RunLimitTest {
    @Test
    void workThatIsGivenUpIsInterruptedAndTheNextIsNot() throws Exception {
        CountDownLatch stopped = new CountDownLatch(1);
        RunLimit soon = new RunLimit(Duration.ofMillis(1));
        assertThatThrownBy(() -> soon.run(() -> waitForEver(stopped), () -> {}))
                .isInstanceOf(RunLimit.Exceeded.class)
                .hasMessageContaining("takes longer than 1 millisecond");
        stopped.await();
        for (int i = 0; i < 20; i++) {
            boolean interrupted =
                    RunLimit.USUAL.run(() -> Thread.currentThread().isInterrupted(), () -> {});
            assertThat(interrupted).isFalse();
        }
    }

    private static String waitForEver(CountDownLatch stopped) {
        try {
            new CountDownLatch(1).await();
            return "never";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "stopped";
        } finally {
            stopped.countDown();
        }
    }

    @Test
    void workWithinWorkHasAThreadOfItsOwn() {
        String both =
                RunLimit.USUAL.run(
                        () -> "outer " + RunLimit.USUAL.run(() -> "inner", () -> {}), () -> {});
        assertThat(both).isEqualTo("outer inner");
    }

    @Test
    void workThatRanOutOfStackIsGivenUpAlone() {
        assertThatThrownBy(() -> RunLimit.USUAL.run(() -> deeper(0), () -> {}))
                .isInstanceOf(RunLimit.Exceeded.class)
                .hasMessageContaining("calls itself without end");
        assertThat(RunLimit.USUAL.run(() -> 1, () -> {})).isEqualTo(1);
    }

    private static long deeper(long level) {
        return level < 0 ? level : 1 + deeper(level + 1);
    }
}
