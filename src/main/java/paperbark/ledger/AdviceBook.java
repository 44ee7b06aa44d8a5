package paperbark.ledger;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import paperbark.value.Money;
import paperbark.value.Serial;

/** An advice on its way into the ledger: what it may match, and what it changes. */
public final class AdviceBook {
    private final Sql sql;
    private final ClaimReader claims;
    private final Source source;
    private long seq;

    AdviceBook(Sql sql, Source source) {
        this.sql = sql;
        this.claims = new ClaimReader(sql);
        this.source = source;
    }

    /**
     * Where the lines come from.
     *
     * @param file name of the file
     * @param sha256 its hash
     * @param day day of the run
     * @param at moment of the run, for people only
     * @param program version of the program
     */
    public record Source(String file, String sha256, LocalDate day, Instant at, String program) {}

    /** The number of a line that came before; empty when it is new. */
    public OptionalLong known(String key) {
        return sql.list("SELECT id FROM line WHERE line_key = ?", r -> r.getLong(1), key).stream()
                .mapToLong(Long::longValue)
                .findFirst();
    }

    /**
     * A line of an earlier advice that says the same but for the job, and was matched to nothing:
     * somebody has written the job into it since.
     */
    public OptionalLong unmatched(AdviceLine line) {
        return sql
                .list(
                        "SELECT id FROM line WHERE day = ? AND cents = ? AND reference = ? AND reference <> ''"
                                + " AND entry <> ? AND id NOT IN (SELECT line FROM matched) ORDER BY id",
                        r -> r.getLong(1),
                        line.day().toString(),
                        line.amount().cents(),
                        line.reference(),
                        seq)
                .stream()
                .mapToLong(Long::longValue)
                .findFirst();
    }

    /** The claims that a line is matched to. */
    public List<ClaimState> matchedTo(long line) {
        return claims.where("c.id IN (SELECT claim FROM matched WHERE line = ?)", line);
    }

    /** ClaimReader by our own name for them, or by the buyer's as an earlier advice told it. */
    public List<ClaimState> byReference(String reference) {
        List<ClaimState> ours = claims.where("c.reference = ?", Keys.job(reference));
        return ours.isEmpty()
                ? claims.where(
                        "c.id IN (SELECT claim FROM matched WHERE buyer_reference <> '' AND buyer_reference = ?)",
                        reference)
                : ours;
    }

    /** ClaimReader with that serial on any of their parts. */
    public List<ClaimState> bySerial(Serial serial) {
        return claims.where(
                "c.id IN (SELECT claim FROM serial WHERE serial_key = ?)", serial.key());
    }

    /** ClaimReader of that job. */
    public List<ClaimState> byJob(String reference) {
        return claims.where("c.job_key = ?", Keys.job(reference));
    }

    /** Standing claims for which exactly this much is still to come. */
    public List<ClaimState> owing(Money amount) {
        return claims.expecting(amount.cents()).stream()
                .filter(c -> c.outstanding().equals(amount))
                .toList();
    }

    /** Writes the line down, without any match yet. */
    public long enter(AdviceLine line) {
        long id = sql.number("SELECT max(id) FROM line") + 1;
        sql.run(
                "INSERT INTO line VALUES (?, ?, ?, ?, ?, ?, ?)",
                id,
                entry(),
                line.key(),
                line.row(),
                line.day().toString(),
                line.amount().cents(),
                line.reference());
        return id;
    }

    /**
     * Matches a line to a claim.
     *
     * @param counted what of the line is the firm's money for this claim
     * @param how by what it was matched, in words
     * @param reason what the buyer says of it
     * @param buyerReference the buyer's own name for the claim; empty text where unknown
     */
    public ClaimState match(
            long line,
            AdviceLine said,
            ClaimState claim,
            AdviceStatus what,
            Money counted,
            String how,
            String reason,
            String buyerReference) {
        sql.run(
                "INSERT INTO matched VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                line,
                claim.id(),
                entry(),
                what.word(),
                said.day().toString(),
                counted.cents(),
                how,
                reason,
                buyerReference);
        return claims.one(claim.id()).orElseThrow();
    }

    /** What a person said of claims. */
    public HandBook byHand() {
        return new HandBook(sql, this);
    }

    /** Name of the entry, once a line has brought something new. */
    public Optional<String> name() {
        return seq == 0 ? Optional.empty() : Optional.of("advice-" + seq);
    }

    /** The entry is made by the first line that brings something new. */
    private long entry() {
        if (seq == 0) {
            seq = sql.number("SELECT max(seq) FROM entry") + 1;
            sql.run(
                    "INSERT INTO entry VALUES (?, 'advice', ?, ?, ?, ?, ?, ?, '', '', '')",
                    seq,
                    "advice-" + seq,
                    source.file(),
                    source.sha256(),
                    source.day().toString(),
                    source.at().toString(),
                    source.program());
        }
        return seq;
    }

    void seal() {
        if (seq > 0) {
            new Chain(sql).seal(seq);
        }
    }
}
