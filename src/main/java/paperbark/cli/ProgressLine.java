package paperbark.cli;

import java.time.Duration;
import java.time.Instant;
import paperbark.batch.Progress;

/**
 * One line on a terminal that grows with the work, with an estimate once there is something to go
 * by; silent where the output goes elsewhere.
 */
final class ProgressLine implements Progress {
    // Before that the program warms up, and an estimate would be far too long.
    private static final Duration TELLING = Duration.ofSeconds(10);
    private static final int SECONDS_A_MINUTE = 60;

    private final Main.World world;
    private final Instant begun;
    private boolean shown;

    ProgressLine(Main.World world) {
        this.world = world;
        this.begun = world.clock().instant();
    }

    @Override
    public void at(String what, int done, int of) {
        if (world.terminal()) {
            shown = true;
            String left = left(Duration.between(begun, world.clock().instant()), done, of);
            // Wide enough to cover a longer line before it.
            world.err().printf("\r%-50s", done + " of " + of + " " + what + left);
            world.err().flush();
        }
    }

    /**
     * How long it will take, in words.
     *
     * @param taken since the beginning
     * @return empty as long as nobody can tell
     */
    static String left(Duration taken, int done, int of) {
        if (done == 0 || done == of || taken.compareTo(TELLING) < 0) {
            return "";
        }
        long seconds = taken.toSeconds() * (of - done) / done;
        return seconds < SECONDS_A_MINUTE
                ? ", less than a minute left"
                : ", about " + (seconds + 30) / SECONDS_A_MINUTE + " min left";
    }

    /** Leaves the line. */
    void end() {
        if (shown) {
            world.err().println();
        }
    }
}
