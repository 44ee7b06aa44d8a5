package paperbark.ledger;

import java.util.List;

/** Books jobs and claims out, within a transaction that the caller holds. */
final class Withdrawing {
    /** How the reason begins why a claim fell away whose place another job takes. */
    static final String CORRECTED_BY = "corrected by job ";

    private final Sql sql;

    Withdrawing(Sql sql) {
        this.sql = sql;
    }

    /** Enters that jobs are withdrawn, as far as they are not yet, with every claim that stands. */
    void enter(WithdrawalEntry withdrawal) {
        List<WithdrawalEntry.Line> open =
                withdrawal.jobs().stream().filter(line -> isOpen(line.job())).toList();
        if (open.isEmpty()) {
            return;
        }
        long seq = sql.number("SELECT max(seq) FROM entry") + 1;
        sql.run(
                "INSERT INTO entry VALUES (?, 'withdrawal', ?, ?, ?, ?, ?, ?, '', '', '')",
                seq,
                "withdrawal-" + seq,
                withdrawal.register(),
                withdrawal.registerSha256(),
                withdrawal.day().toString(),
                withdrawal.at().toString(),
                withdrawal.program());
        open.forEach(line -> job(seq, Keys.job(line.job()), line.reason()));
        new Chain(sql).seal(seq);
    }

    /** Whether the ledger has the job and its newest version is not withdrawn. */
    private boolean isOpen(String reference) {
        String key = Keys.job(reference);
        return newest(key) > 0
                && sql.number(
                                "SELECT count(*) FROM withdrawn WHERE job_key = ? AND version = ?",
                                key,
                                newest(key))
                        == 0;
    }

    private long newest(String key) {
        return sql.number("SELECT max(version) FROM job WHERE job_key = ?", key);
    }

    /** Another job takes its place: it is gone for all that is told of it. */
    void replaced(long seq, String key, String by) {
        if (isOpen(key)) {
            job(seq, key, CORRECTED_BY + by);
        }
    }

    private void job(long seq, String key, String reason) {
        sql.run("INSERT INTO withdrawn VALUES (?, ?, ?, ?)", seq, key, newest(key), reason);
        sql.list(
                        "SELECT id FROM claim WHERE job_key = ? AND active = 1 ORDER BY id",
                        r -> r.getLong(1),
                        key)
                .forEach(id -> claim(seq, id, reason));
    }

    /** A claim stands no longer, and its serials are free again. */
    void claim(long seq, long claim, String reason) {
        sql.run("INSERT INTO withdrawal VALUES (?, ?, ?)", claim, seq, reason);
        sql.run("UPDATE claim SET active = 0 WHERE id = ?", claim);
        sql.run("UPDATE serial SET active = 0 WHERE claim = ?", claim);
    }
}
