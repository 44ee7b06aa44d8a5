package paperbark.cli;

import paperbark.batch.Progress;

/** One line on a terminal that grows with the work; silent where the output goes elsewhere. */
final class ProgressLine implements Progress {
    private final Main.World world;
    private boolean shown;

    ProgressLine(Main.World world) {
        this.world = world;
    }

    @Override
    public void at(String what, int done, int of) {
        if (world.terminal()) {
            shown = true;
            world.err().print("\r" + done + " of " + of + " " + what + " ");
            world.err().flush();
        }
    }

    /** Leaves the line. */
    void end() {
        if (shown) {
            world.err().println();
        }
    }
}
