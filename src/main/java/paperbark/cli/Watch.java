package paperbark.cli;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.batch.Ending;
import paperbark.batch.Trouble;
import paperbark.office.Attendant;

/**
 * Attends an office folder for good. What the world keeps from being done is said once and tried
 * again at each look, and so is a fault of our own; only a ledger that cannot be trusted ends it.
 */
final class Watch {
    private final Main.World world;
    private final Attendant attendant;
    private final Set<String> said = new HashSet<>();
    private final Map<String, String> toldOf = new HashMap<>();
    private Map<String, String> waiting = Map.of();

    Watch(Main.World world, Attendant attendant) {
        this.world = world;
        this.attendant = attendant;
    }

    /**
     * Looks once.
     *
     * @throws Exception when going on makes no sense
     */
    void look() throws Exception {
        try {
            waiting(attendant.round());
        } catch (Exception failure) {
            Optional<Trouble> trouble = Trouble.of(failure);
            if (trouble.isEmpty()) {
                ours(failure);
            } else if (trouble.get().kind().ending() == Ending.UNTRUSTED) {
                throw failure;
            } else {
                theirs(trouble.get());
            }
            return;
        }
        if (!said.isEmpty()) {
            said.clear();
            tell("The trouble is over; the work goes on.");
        }
    }

    /** Each reason is said once; one that mostly passes by itself only when it did not. */
    private void waiting(Attendant.Round round) {
        round.waiting()
                .forEach(
                        (file, why) -> {
                            boolean stays = why.equals(waiting.get(file));
                            if ((stays || !Attendant.Round.isPassing(why))
                                    && !why.equals(toldOf.put(file, why))) {
                                tell(file + " waits. " + why);
                            }
                        });
        toldOf.keySet().retainAll(round.waiting().keySet());
        waiting = round.waiting();
    }

    /** The same trouble may name another file each time, so that its kind is what counts. */
    private void theirs(Trouble trouble) {
        Trouble.Kind kind = trouble.kind();
        if (said.add(kind == Trouble.Kind.RULES ? trouble.said() : kind.name())) {
            tell("Trouble: " + trouble.said());
            tell("  Registers stay in intake, and each look tries again.");
        }
    }

    private void ours(Exception failure) {
        StackTraceElement[] trace = failure.getStackTrace();
        if (said.add(failure.getClass() + (trace.length == 0 ? "" : trace[0].toString()))) {
            new Faults(world).ours(failure);
            tell("  The register is tried again, and goes back unread after the third time.");
        }
    }

    private void tell(String line) {
        world.out().println(line);
        world.out().flush();
    }
}
