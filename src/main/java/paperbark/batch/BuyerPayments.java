package paperbark.batch;

import java.nio.file.Path;
import java.util.Optional;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.ledger.ClaimState;
import paperbark.offer.Sent;
import paperbark.rules.Rulebook;
import paperbark.rules.RulebookException;
import paperbark.rules.Unkeyed;
import paperbark.value.Money;

/**
 * What buyers send who pay GST on top, as the sheets tell it. The ledger has what of it is the
 * firm's and the owner's; what is nobody's follows from the offer. Tables are read when first
 * asked.
 */
public final class BuyerPayments {
    private final Path tables;
    private final Optional<Path> rules;
    private Optional<Known> known = Optional.empty();

    /**
     * By the firm's tables.
     *
     * @param tables folder or workbook
     * @param rules folder of its newer rule tables
     */
    public BuyerPayments(Path tables, Optional<Path> rules) {
        this.tables = tables;
        this.rules = rules;
    }

    /**
     * A payment.
     *
     * @param net what the buyer pays for the certificates, fees taken off
     * @param onTop GST that comes with it, or later against the owner's invoice
     */
    public record Payment(Money net, Money onTop) {}

    private record Known(Optional<FirmTables> tables, Optional<Rulebook> rulebook) {}

    /**
     * What the buyer of a claim sends; empty where there is no GST on top, or where no offer has
     * the parts that the ledger has.
     */
    public Optional<Payment> of(ClaimState claim) {
        Optional<Integer> divisor =
                known().rulebook()
                        .flatMap(r -> r.gst().on(claim.installedOn(), Unkeyed.ALL))
                        .map(rule -> rule.row().priceDivisor());
        return divisor.flatMap(d -> sent(claim, d))
                .map(sent -> new Payment(sent.net(), sent.onTop()));
    }

    private Optional<Sent> sent(ClaimState claim, int divisor) {
        return known().tables().stream()
                .flatMap(t -> t.offers().stream())
                .filter(o -> o.buyer().equals(claim.buyer()) && o.scheme() == claim.scheme())
                .filter(o -> o.inForce().contains(claim.claimedOn()))
                .map(o -> Sent.of(o, claim.certificates(), true, divisor))
                .filter(sent -> !sent.onTop().isZero())
                .filter(sent -> sent.isShared(claim.toOwner(), claim.expected(), divisor))
                .findFirst();
    }

    private Known known() {
        if (known.isEmpty()) {
            known = Optional.of(new Known(FirmTablesReader.read(tables).result(), rulebook()));
        }
        return known.get();
    }

    /** What is wrong with a rule table is said where papers are made of it. */
    private Optional<Rulebook> rulebook() {
        try {
            return Optional.of(Rulebook.load(rules));
        } catch (RulebookException unread) {
            return Optional.empty();
        }
    }
}
