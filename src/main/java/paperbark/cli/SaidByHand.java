package paperbark.cli;

import java.io.IOException;
import java.time.LocalDate;
import paperbark.batch.Ending;
import paperbark.ledger.ClaimState;
import paperbark.settle.ByHand;
import paperbark.value.Days;

/** What the commands have in common that enter what no advice tells. */
final class SaidByHand {
    private SaidByHand() {}

    /** Where and when. */
    static ByHand.Order order(LedgerOptions options, Main.World world) throws IOException {
        return new ByHand.Order(
                options.ledger(world),
                options.payments(world),
                options.day(world),
                world.clock().instant(),
                Version.text());
    }

    /**
     * Says what came of it.
     *
     * @param unsay whether the entry can be unsaid
     * @return the exit code
     */
    static int tell(Main.World world, ByHand.Result result, boolean unsay) {
        result.refused().stream().distinct().forEach(world.err()::println);
        if (!result.refused().isEmpty()) {
            world.err().println("Nothing was entered.");
            return Ending.USAGE.exitCode();
        }
        result.before().stream().distinct().forEach(world.out()::println);
        result.remarks().forEach(world.out()::println);
        result.claims().forEach(claim -> world.out().println("Now:          " + state(claim)));
        result.entry()
                .ifPresent(
                        entry ->
                                world.out()
                                        .println(
                                                "Entered:      "
                                                        + entry
                                                        + (unsay
                                                                ? ", to be unsaid with: unsay "
                                                                        + entry
                                                                : "")));
        return (result.entry().isPresent() ? Ending.DONE : Ending.ALREADY).exitCode();
    }

    private static String state(ClaimState claim) {
        String lodged = claim.lodged() ? "lodged" : "not known to be lodged";
        String failed = claim.failed().isPresent() ? ", failed" : "";
        String late =
                claim.lodged() || !claim.active()
                        ? ""
                        : claim.lodgeBy().map(SaidByHand::closes).orElse("");
        return claim.reference()
                + ", "
                + claim.certificates()
                + " certificates"
                + (claim.buyer().isEmpty() ? "" : " to " + claim.buyer())
                + ": "
                + (claim.active() ? lodged + failed : "withdrawn")
                + ", "
                + claim.received()
                + " received, "
                + claim.balance()
                + late;
    }

    private static String closes(LocalDate day) {
        return ", closes " + Days.show(day);
    }
}
