package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import paperbark.batch.BuyerPayments.Payment;
import paperbark.finding.Finding;
import paperbark.firm.Words;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.sheet.Column;
import paperbark.sheet.Sheet;

/** A buyer's payment advice and what became of its lines. */
public final class Advice {
    private Advice() {}

    /**
     * What came of settler.
     *
     * @param lines in the order of the rows
     * @param findings in the order of the rows
     * @param unread rows of which nothing was taken in, because a cell cannot be used
     */
    public record Settled(List<SettledLine> lines, List<Finding> findings, int unread) {

        /** Keeps the lists from being changed. */
        public Settled {
            lines = List.copyOf(lines);
            findings = List.copyOf(findings);
        }

        /** Whether a line is left to a person. */
        public boolean needsPerson() {
            return unread > 0 || lines.stream().anyMatch(l -> l.ending().needsPerson());
        }
    }

    /**
     * Takes an advice into the ledger, whole or not at all. Lines that came before change nothing.
     *
     * @param sheet the advice
     * @param columns its columns by field
     * @param source where it comes from
     * @param ledger what is expected
     * @param firm what the firm's tables say
     * @param defaults what lines mean that do not say it
     */
    public static Settled settle(
            Sheet sheet,
            Map<AdviceField, Column> columns,
            AdviceBook.Source source,
            Ledger ledger,
            Firm firm,
            Defaults defaults) {
        AdviceReader reader = new AdviceReader(firm.words(), defaults.paidOn(), defaults.buyer());
        List<RemittanceLine> lines = reader.read(sheet, columns);
        return ledger.settle(
                source,
                book -> {
                    LineSettler settler = new LineSettler(book, source.day(), firm.sent());
                    List<SettledLine> settled = lines.stream().map(settler::settle).toList();
                    List<Finding> findings = new ArrayList<>(reader.findings());
                    findings.addAll(settler.findings());
                    return new Settled(
                            settled, Finding.inOrder(findings), sheet.rows().size() - lines.size());
                });
    }

    /**
     * What the firm's tables say.
     *
     * @param words what buyers call things
     * @param sent what the buyer of a claim sends where GST comes on top
     */
    public record Firm(Words words, Function<ClaimState, Optional<Payment>> sent) {}

    /**
     * What lines mean that do not say it.
     *
     * @param paidOn the day
     * @param buyer who pays
     */
    public record Defaults(Optional<LocalDate> paidOn, Optional<String> buyer) {}
}
