package paperbark.output;

import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Runs a piece of work that a template decides on a thread of its own, and gives up on it after a
 * time. Running out of stack or memory ends the work alone as well. Safe for use by several
 * threads.
 */
public final class RunLimit {
    /**
     * A paper takes some ten milliseconds, and a second where the program has just started on a
     * busy machine; what takes 20 seconds never ends.
     */
    public static final RunLimit USUAL = new RunLimit(Duration.ofSeconds(20));

    /** For pages of our own, which end, and are as long as a register has jobs. */
    public static final RunLimit OWN_PAGE = new RunLimit(Duration.ofMinutes(10), Integer.MAX_VALUE);

    // A pack's longest paper has some 30,000 characters.
    private static final int LONGEST_PAPER = 4_000_000;

    // Work that ran out of memory is done again while no other such work is: whoever took the
    // memory may have been a neighbour.
    private static final Object ALONE = new Object();

    // One is used again by the next work, since starting one takes longer than most work; one whose
    // work is given up is busy for as long as that goes on. A thread without work ends soon, and
    // with it what the layout left on it.
    private static final ExecutorService THREADS =
            new ThreadPoolExecutor(
                    0,
                    Integer.MAX_VALUE,
                    1,
                    TimeUnit.SECONDS,
                    new SynchronousQueue<>(),
                    RunLimit::thread);

    private final Duration longest;
    private final int longestText;

    /** A limit of that time, more than zero. */
    public RunLimit(Duration longest) {
        this(longest, LONGEST_PAPER);
    }

    private RunLimit(Duration longest, int longestText) {
        this.longest = longest;
        this.longestText = longestText;
    }

    /** So many characters may be printed at most. */
    int longestText() {
        return longestText;
    }

    /** The work; it may be done twice, so it changes nothing. */
    public interface Work<T, X extends Exception> {
        /** Does it. */
        T get() throws X;
    }

    /** What the work ran out of. */
    public enum Reason {
        TIME,
        STACK,
        MEMORY
    }

    /** The work was given up. */
    public static final class Exceeded extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final Reason reason;

        Exceeded(Reason reason, String fact) {
            super(fact);
            this.reason = reason;
        }

        /** What the work ran out of. */
        public Reason reason() {
            return reason;
        }
    }

    /**
     * Does the work.
     *
     * @param beforeStop called once the time is over, while the work still runs
     * @throws Exceeded when it was given up; its message continues a sentence such as "The
     *     template"
     * @throws X when the work fails in its own way
     */
    public <T, X extends Exception> T run(Work<T, X> work, Runnable beforeStop) throws X {
        try {
            return once(work, beforeStop);
        } catch (Exceeded e) {
            if (e.reason() != Reason.MEMORY) {
                throw e;
            }
            synchronized (ALONE) {
                return once(work, beforeStop);
            }
        }
    }

    private <T, X extends Exception> T once(Work<T, X> work, Runnable beforeStop) throws X {
        Future<T> task = THREADS.submit(work::get);
        try {
            return task.get(longest.toMillis(), TimeUnit.MILLISECONDS);
        } catch (ExecutionException e) {
            throw RunLimit.<X>asThrown(e.getCause());
        } catch (TimeoutException e) {
            beforeStop.run();
            task.cancel(true);
            throw new Exceeded(Reason.TIME, "takes longer than " + inWords(longest));
        } catch (InterruptedException e) {
            task.cancel(true);
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
    }

    /**
     * Some work cannot be interrupted, such as the search for a pattern in a long text; it must not
     * keep the program from ending.
     */
    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "paper");
        thread.setDaemon(true);
        return thread;
    }

    // Whatever is neither unchecked nor an error is what the work declares.
    @SuppressWarnings("unchecked")
    private static <X extends Exception> X asThrown(Throwable cause) {
        if (cause instanceof StackOverflowError) {
            throw new Exceeded(Reason.STACK, "calls itself without end");
        }
        if (cause instanceof OutOfMemoryError) {
            throw new Exceeded(Reason.MEMORY, "needs more memory than there is");
        }
        if (cause instanceof Error error) {
            throw error;
        }
        if (cause instanceof RuntimeException fault) {
            throw fault;
        }
        return (X) cause;
    }

    private static String inWords(Duration time) {
        return time.toSeconds() >= 1
                ? time.toSeconds() + (time.toSeconds() == 1 ? " second" : " seconds")
                : time.toMillis() + " milliseconds";
    }
}
