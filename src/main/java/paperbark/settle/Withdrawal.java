package paperbark.settle;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.batch.AdviceFiles;
import paperbark.batch.WithdrawnSales;
import paperbark.ledger.ClaimState;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.WithdrawalEntry;

/** Books a job out of the ledger because a person says so. */
public final class Withdrawal {
    private Withdrawal() {}

    /**
     * What is to be done.
     *
     * @param job the job number
     * @param reason why
     * @param ledger the ledger
     * @param today day of the run
     * @param at moment of the run, for people only
     * @param version version of the program
     */
    public record Order(
            String job,
            String reason,
            LedgerPlace ledger,
            LocalDate today,
            Instant at,
            String version) {}

    /**
     * What came of it.
     *
     * @param versions what the ledger has of the job; none when it does not know it
     * @param claims the claims that stood until now
     * @param sold whether a batch sold it, and nothing has called that off until now
     * @param journal what takes the sale back, where a journal had booked it
     * @param done whether it was booked out; if not, it had been before
     */
    public record Result(
            List<JobVersion> versions,
            List<ClaimState> claims,
            boolean sold,
            Optional<Path> journal,
            boolean done) {}

    /**
     * Books a job out, whole or not at all: nothing is owed for it, serials and site are free.
     *
     * @throws IOException when the entry's file cannot be written; the next run does it
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public static Result run(Order order) throws IOException {
        try (Ledger ledger = Ledger.open(order.ledger())) {
            ledger.verify();
            List<JobVersion> versions = ledger.versions(order.job());
            List<ClaimState> standing =
                    ledger.claimsOf(order.job()).stream().filter(ClaimState::active).toList();
            boolean sold = ledger.income().isSold(order.job());
            boolean done =
                    ledger.withdraw(
                            new WithdrawalEntry(
                                    List.of(new WithdrawalEntry.Line(order.job(), order.reason())),
                                    "",
                                    "",
                                    order.today(),
                                    order.at(),
                                    order.version()));
            AdviceFiles.complete(ledger, AdviceFiles.beside(order.ledger()));
            WithdrawnSales.complete(ledger, order.ledger());
            Optional<Path> journal =
                    done && sold
                            ? WithdrawnSales.of(ledger, order.ledger(), order.job())
                            : Optional.empty();
            return new Result(versions, standing, sold, journal, done);
        }
    }
}
