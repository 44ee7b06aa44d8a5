package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(value = 1, unit = TimeUnit.MINUTES)
class EarlyTest {
    private final Workers workers = new Workers(2);
    private final List<String> made = Collections.synchronizedList(new ArrayList<>());

    @AfterEach
    void end() {
        workers.close();
    }

    @Test
    void twoPiecesOfWorkAreDoneAtATime() throws IOException {
        CountDownLatch both = new CountDownLatch(2);
        Early<String> one = workers.begin(() -> met(both, "one"));
        Early<String> other = workers.begin(() -> met(both, "other"));
        assertThat(one.get()).isEqualTo("one");
        assertThat(other.get()).isEqualTo("other");
    }

    @Test
    void withOneThreadNothingIsBegunBeforeItsTurn() throws IOException {
        try (Workers alone = new Workers(1)) {
            Early<String> work = alone.begin(() -> noted("done"));
            assertThat(work.likely("nothing yet")).isEqualTo("nothing yet");
            work.end();
            assertThat(made).isEmpty();
            assertThat(work.get()).isEqualTo("done");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void workFailsInItsOwnWayAtItsTurn(int threads) throws IOException {
        try (Workers some = new Workers(threads)) {
            IOException disk = new IOException("No space left on device");
            IllegalStateException fault = new IllegalStateException("row 7");
            StackOverflowError error = new StackOverflowError();
            Early<String> full =
                    some.begin(
                            () -> {
                                throw disk;
                            });
            Early<String> wrong =
                    some.begin(
                            () -> {
                                throw fault;
                            });
            Early<String> deep =
                    some.begin(
                            () -> {
                                throw error;
                            });
            full.end();
            assertThat(wrong.likely("another")).isEqualTo("another");
            assertThatThrownBy(full::get).isSameAs(disk);
            assertThatThrownBy(wrong::get).isSameAs(fault);
            assertThatThrownBy(deep::get).isSameAs(error);
        }
    }

    @Test
    void workThatRanOutOfMemoryBesideOtherWorkIsDoneAgain() throws IOException {
        AtomicInteger tries = new AtomicInteger();
        Early<String> work =
                workers.begin(
                        () -> {
                            if (tries.getAndIncrement() == 0) {
                                throw new OutOfMemoryError("Java heap space");
                            }
                            return "done";
                        });
        assertThat(work.get()).isEqualTo("done");
    }

    @Test
    void aRightGuessIsMadeOnce() throws IOException {
        Guessed<String, String> work = workers.begin("nothing", this::noted);
        assertThat(work.with("nothing")).isEqualTo("nothing");
        assertThat(made).containsExactly("nothing");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aWrongGuessIsMadeAgainAfterwards(int threads) throws IOException {
        try (Workers some = new Workers(threads)) {
            Guessed<String, String> work = some.begin("nothing", this::noted);
            assertThat(work.with("a finding")).isEqualTo("a finding");
            assertThat(made.get(made.size() - 1)).isEqualTo("a finding");
        }
    }

    @Test
    void whatIsGivenUpHasEndedOnceItIsClosed() throws InterruptedException {
        CountDownLatch running = new CountDownLatch(1);
        workers.begin(
                () -> {
                    try {
                        running.countDown();
                        new CountDownLatch(1).await();
                        return "never";
                    } catch (InterruptedException e) {
                        throw new IOException(noted("given up"), e);
                    }
                });
        running.await();
        workers.close();
        assertThat(made).containsExactly("given up");
    }

    private String noted(String what) {
        made.add(what);
        return what;
    }

    private static String met(CountDownLatch both, String name) throws IOException {
        both.countDown();
        try {
            both.await();
        } catch (InterruptedException e) {
            throw new IOException(e);
        }
        return name;
    }
}
