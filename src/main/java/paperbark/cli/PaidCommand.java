package paperbark.cli;

import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.settle.ByHand;
import paperbark.value.Money;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** {@code paid}: money came for a claim, and no advice tells it. */
@Command(
        name = "paid",
        description = {
            "Enters a payment for a claim, where no buyer's advice tells it.",
            "An advice that tells the same payment later is recognised and changes nothing."
        },
        footer = {"", "Example:", "  paperbark paid SB-1101-STC 505.80"},
        mixinStandardHelpOptions = true)
final class PaidCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(
            index = "0",
            paramLabel = "CLAIM",
            description = "The claim's name as owed lists it, or a job with one claim.")
    private String claim;

    @Parameters(
            index = "1",
            paramLabel = "AMOUNT",
            converter = AmountConverter.class,
            description = "What came, in dollars and cents, e.g. 504.00.")
    private Money amount;

    @Option(
            names = "--on",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day on which it came; otherwise the day of the run.")
    private Optional<LocalDate> on = Optional.empty();

    @Option(names = "--more", description = "It is meant to be more than is still to come.")
    private boolean more;

    @Option(names = "--again", description = "The same amount did come a second time on that day.")
    private boolean again;

    @Mixin private LedgerOptions options;

    PaidCommand(Main.World world) {
        this.world = world;
    }

    /** Reads an amount of money that can have come. */
    static final class AmountConverter implements ITypeConverter<Money> {
        @Override
        public Money convert(String text) {
            String plain = text.strip().replaceFirst("^\\$", "").replace(",", "");
            if (!plain.matches("\\d{1,9}(\\.\\d{1,2})?") || Money.of(plain).isZero()) {
                throw new TypeConversionException(
                        "\""
                                + text
                                + "\" is no amount that can have come; type it like 504.00. What was taken back comes"
                                + " with an advice; a mistake is unsaid.");
            }
            return Money.of(plain);
        }
    }

    @Override
    public Integer call() throws Exception {
        ByHand.Order order = SaidByHand.order(options, world);
        ByHand.Payment payment =
                new ByHand.Payment(claim, amount, on.orElse(order.today()), more, again);
        return SaidByHand.tell(world, ByHand.paid(payment, order), true);
    }
}
