package paperbark.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.ledger.ClaimState;
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
    private static final int REFERENCE = 20;
    private static final int MONEY = 12;
    private static final int DAY = 12;
    private static final int NUMBER = 4;
    private static final int SCHEME = 6;

    private final Main.World world;

    @Mixin private LedgerOptions options;

    private PrintWriter out;

    OwedCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        LocalDate day = options.day(world);
        Owing owing = options.read(world, ledger -> Owing.of(ledger, day));
        // There may be 100,000 lines, which are not handed over one by one.
        out = new PrintWriter(world.out());
        line("Owed on " + Days.show(owing.asOf()), heads());
        owing.byBuyer().forEach((buyer, ages) -> line(buyer, amounts(ages)));
        line("Total", amounts(owing.total()));
        overdue(owing);
        failed(owing);
        paidBefore(owing);
        closing(owing);
        tooLate(owing);
        out.flush();
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
        StringBuilder line = new StringBuilder(Column.left(first, BUYER));
        cells.forEach(cell -> line.append(Column.right(cell, AMOUNT)));
        out.println(line);
    }

    private void overdue(Owing owing) {
        out.println();
        out.println("Overdue, longest first");
        List<Owing.Line> lines = owing.open().stream().filter(l -> l.daysOverdue() > 0).toList();
        lines.forEach(l -> out.println("  " + overdue(l)));
        none(lines);
    }

    private static String overdue(Owing.Line line) {
        ClaimState claim = line.claim();
        return Column.left(claim.reference(), REFERENCE)
                + " "
                + Column.right(claim.outstanding(), MONEY)
                + "  due "
                + Column.left(claim.due().map(Days::show).orElse("-"), DAY)
                + " "
                + Column.right(line.daysOverdue(), NUMBER)
                + " days  "
                + claim.buyer();
    }

    private void failed(Owing owing) {
        out.println();
        out.println("Failed, nothing owed until lodged again");
        owing.failed().forEach(c -> out.println("  " + failed(c, owing)));
        none(owing.failed());
    }

    private static String failed(ClaimState claim, Owing owing) {
        String line = claim.lodgeBy().isPresent() ? closing(claim, owing) : claim.reference();
        String paid =
                claim.received().isZero() ? "" : "  " + claim.received() + " may be asked back";
        return line + paid + claim.failed().filter(r -> !r.isEmpty()).map(r -> "  " + r).orElse("");
    }

    /** Few offices ever have one, so that there is no word of it without. */
    private void paidBefore(Owing owing) {
        if (!owing.paidBefore().isEmpty()) {
            out.println();
            out.println("Paid for claims that stand no longer, may be asked back");
            owing.paidBefore()
                    .forEach(
                            c ->
                                    out.println(
                                            "  "
                                                    + Column.left(c.reference(), REFERENCE)
                                                    + " "
                                                    + Column.right(c.received(), MONEY)
                                                    + "  "
                                                    + c.buyer()));
        }
    }

    private void closing(Owing owing) {
        out.println();
        out.println(
                "Not lodged as far as the ledger knows, closing in fewer than "
                        + Owing.CLOSING_DAYS
                        + " days");
        owing.closing().forEach(c -> out.println("  " + closing(c, owing)));
        none(owing.closing());
    }

    /** Few offices ever have one, so that there is no word of it without. */
    private void tooLate(Owing owing) {
        if (!owing.tooLate().isEmpty()) {
            out.println();
            out.println("Past their last day, not lodged as far as the ledger knows");
            owing.tooLate().forEach(c -> out.println("  " + failed(c, owing)));
            out.println(Lodging.WHEN_TOO_LATE);
        }
    }

    private static String closing(ClaimState claim, Owing owing) {
        long left = ChronoUnit.DAYS.between(owing.asOf(), claim.lodgeBy().orElseThrow());
        return Column.left(claim.reference(), REFERENCE)
                + " "
                + Column.right(claim.certificates(), NUMBER + 1)
                + " "
                + Column.left(claim.scheme().word() + "s", SCHEME)
                + " closes "
                + Column.left(Days.show(claim.lodgeBy().orElseThrow()), DAY)
                + " "
                + (left < 0 ? "closed " + -left + " days ago" : left + " days left")
                + Optional.ofNullable(owing.awaited().get(claim.id()))
                        .map(came -> "  assignment " + came)
                        .orElse("");
    }

    private void none(List<?> list) {
        if (list.isEmpty()) {
            out.println("  none");
        }
    }
}
