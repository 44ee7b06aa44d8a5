package paperbark.cli;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Failed;
import paperbark.ledger.Lodging;
import paperbark.settle.Owing;
import paperbark.value.Days;
import paperbark.value.DebtAge;
import paperbark.value.Money;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code owed}: what is still to come, how long it is overdue, and what must be lodged soon. */
@Command(
        name = "owed",
        description =
                "Lists what buyers still owe by age, each overdue claim, failed claims, and claims not lodged that close within 60 days or are past their last day.",
        footer = {"", "Example:", "  paperbark owed --ledger office/paperbark.db"},
        mixinStandardHelpOptions = true)
final class OwedCommand implements Callable<Integer> {
    private static final int BUYER = 24;
    private static final int AMOUNT = 14;

    private final Main.World world;

    @Mixin private LedgerOptions options;

    OwedCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Owing owing = Owing.of(options.ledger(world), options.day(world));
        line("Owed on " + Days.show(owing.asOf()), heads());
        owing.byBuyer().forEach((buyer, ages) -> line(buyer, amounts(ages)));
        line("Total", amounts(owing.total()));
        overdue(owing);
        failed(owing);
        paidBefore(owing);
        closing(owing);
        tooLate(owing);
        return Ending.DONE.exitCode();
    }

    private static List<String> heads() {
        List<String> heads = new ArrayList<>();
        for (DebtAge age : DebtAge.values()) {
            heads.add(age.words());
        }
        heads.add("together");
        return heads;
    }

    private static List<String> amounts(Map<DebtAge, Money> ages) {
        List<String> cells = new ArrayList<>();
        ages.values().forEach(amount -> cells.add(amount.isZero() ? "-" : amount.toString()));
        cells.add(ages.values().stream().reduce(Money.ZERO, Money::plus).toString());
        return cells;
    }

    private void line(String first, List<String> cells) {
        StringBuilder line = new StringBuilder(String.format("%-" + BUYER + "s", first));
        cells.forEach(cell -> line.append(String.format("%" + AMOUNT + "s", cell)));
        world.out().println(line);
    }

    private void overdue(Owing owing) {
        world.out().println();
        world.out().println("Overdue, longest first");
        List<Owing.Line> lines = owing.open().stream().filter(l -> l.daysOverdue() > 0).toList();
        lines.forEach(
                l ->
                        world.out()
                                .printf(
                                        "  %-20s %12s  due %-12s %4d days  %s%n",
                                        l.claim().reference(),
                                        l.claim().outstanding(),
                                        l.claim().due().map(Days::show).orElse("-"),
                                        l.daysOverdue(),
                                        l.claim().buyer()));
        none(lines);
    }

    private void failed(Owing owing) {
        world.out().println();
        world.out().println("Failed, nothing owed until lodged again");
        owing.failed().forEach(c -> world.out().println("  " + failed(c, owing)));
        none(owing.failed());
    }

    private static String failed(ClaimState claim, Owing owing) {
        String line = claim.lodgeBy().isPresent() ? closing(claim, owing) : claim.reference();
        String paid =
                claim.received().isZero() ? "" : "  " + claim.received() + " may be asked back";
        return line
                + paid
                + claim.failed()
                        .map(Failed::reason)
                        .filter(r -> !r.isEmpty())
                        .map(r -> "  " + r)
                        .orElse("");
    }

    /** Few offices ever have one, so that there is no word of it without. */
    private void paidBefore(Owing owing) {
        if (!owing.paidBefore().isEmpty()) {
            world.out().println();
            world.out().println("Paid for claims that stand no longer, may be asked back");
            owing.paidBefore()
                    .forEach(
                            c ->
                                    world.out()
                                            .printf(
                                                    "  %-20s %12s  %s%n",
                                                    c.reference(), c.received(), c.buyer()));
        }
    }

    private void closing(Owing owing) {
        world.out().println();
        world.out()
                .println(
                        "Not lodged as far as the ledger knows, closing in fewer than "
                                + Owing.CLOSING_DAYS
                                + " days");
        owing.closing().forEach(c -> world.out().println("  " + closing(c, owing)));
        none(owing.closing());
    }

    /** Few offices ever have one, so that there is no word of it without. */
    private void tooLate(Owing owing) {
        if (!owing.tooLate().isEmpty()) {
            world.out().println();
            world.out().println("Past their last day, not lodged as far as the ledger knows");
            owing.tooLate().forEach(c -> world.out().println("  " + failed(c, owing)));
            world.out().println(Lodging.WHEN_TOO_LATE);
        }
    }

    private static String closing(ClaimState claim, Owing owing) {
        long left = ChronoUnit.DAYS.between(owing.asOf(), claim.lodgeBy().orElseThrow());
        return String.format(
                "%-20s %5d %-6s closes %-12s %s",
                claim.reference(),
                claim.certificates(),
                claim.scheme().word() + "s",
                Days.show(claim.lodgeBy().orElseThrow()),
                (left < 0 ? "closed " + -left + " days ago" : left + " days left")
                        + Optional.ofNullable(owing.awaited().get(claim.id()))
                                .map(came -> "  assignment " + came)
                                .orElse(""));
    }

    private void none(List<?> list) {
        if (list.isEmpty()) {
            world.out().println("  none");
        }
    }
}
