package paperbark.ledger;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Writes a batch into the ledger, within a transaction that the caller holds. */
final class Recorder {
    private final Sql sql;

    Recorder(Sql sql) {
        this.sql = sql;
    }

    void batch(BatchEntry batch) {
        if (sql.number("SELECT count(*) FROM entry WHERE name = ?", batch.name()) > 0) {
            throw new LedgerBusyException(
                    "Another run took in the batch "
                            + new BatchWords(sql).of(batch.name())
                            + " meanwhile, which has the name of this one.",
                    "Prepare the register again.");
        }
        long seq = next("SELECT max(seq) FROM entry");
        sql.run(
                "INSERT INTO entry VALUES (?, 'batch', ?, ?, ?, ?, ?, ?, ?, '', '')",
                seq,
                batch.name(),
                batch.register(),
                batch.registerSha256(),
                batch.day().toString(),
                batch.at().toString(),
                batch.program(),
                batch.manifestSha256());
        sql.run(
                "INSERT INTO progress VALUES (?, ?, ?, 'committed')",
                seq,
                batch.place(),
                batch.staged());
        batch.jobs().forEach(job -> job(seq, batch.salt(), job));
        new Chain(sql).seal(seq);
    }

    private void job(long seq, String salt, JobEntry job) {
        String key = Keys.job(job.reference());
        long version = sql.number("SELECT max(version) FROM job WHERE job_key = ?", key) + 1;
        sql.run(
                "INSERT INTO job VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                seq,
                key,
                version,
                job.reference(),
                job.row(),
                job.outcome().word(),
                job.pack(),
                Sql.text(job.installedOn()),
                Sql.text(job.warrantyUntil()));
        personal(seq, key, version, job, salt);
        job.sale()
                .ifPresent(
                        sale ->
                                sql.run(
                                        "INSERT INTO sale VALUES (?, ?, ?, ?, ?, ?)",
                                        seq,
                                        key,
                                        version,
                                        sale.installedOn().toString(),
                                        sale.price().cents(),
                                        sale.gst().cents()));
        job.papers().stream()
                .sorted(Comparator.comparing(PaperEntry::kind))
                .forEach(
                        paper ->
                                sql.run(
                                        "INSERT INTO paper VALUES (?, ?, ?, ?, ?)",
                                        seq,
                                        key,
                                        version,
                                        paper.kind(),
                                        paper.says()));
        if (job.asItWas()) {
            stillTakenBack(seq, key, version);
        } else {
            dropped(seq, key, job);
        }
        job.claims().forEach(claim -> claim(seq, key, version, job, claim));
    }

    /** What counted no longer does not count again because of a row that may not be the job. */
    private void stillTakenBack(long seq, String key, long version) {
        sql.run(
                "INSERT INTO paper SELECT ?, job_key, ?, kind, says FROM paper"
                        + " WHERE job_key = ? AND version = ? AND kind LIKE ?",
                seq,
                version,
                key,
                version - 1,
                "%" + PaperEntry.TAKEN_BACK);
    }

    /**
     * What this version claims no longer falls away, but for what the buyer has while its new paper
     * is held; and so does a job whose place it takes, with every claim.
     */
    private void dropped(long seq, String key, JobEntry job) {
        Withdrawing withdrawing = new Withdrawing(sql);
        Set<SchemeName> claimed =
                job.claims().stream().map(ClaimEntry::scheme).collect(Collectors.toSet());
        for (ClaimState claim : standing(key)) {
            boolean stays = claim.isWithBuyer() && job.held().contains(claim.scheme());
            if (!claimed.contains(claim.scheme()) && !stays) {
                withdrawing.claim(seq, claim.id(), "no longer claimed");
            }
        }
        for (String other : new Versions(sql).corrected(job.corrects())) {
            if (!other.equals(key)) {
                withdrawing.replaced(seq, other, job.reference());
            }
        }
    }

    private List<ClaimState> standing(String key) {
        return new ClaimReader(sql).where("c.active = 1 AND c.job_key = ?", key);
    }

    private void personal(long seq, String key, long version, JobEntry job, String salt) {
        List<String> told =
                List.of(
                        key,
                        String.valueOf(version),
                        job.siteKey(),
                        job.prints().key(),
                        job.prints().text(),
                        DigestUtils.sha256Hex(salt + key + "/" + version));
        List<Object> values = new ArrayList<>(List.of(seq));
        values.addAll(SealedTable.PERSONAL.sealed(told));
        sql.run(SealedTable.PERSONAL.insert(), values.toArray());
    }

    /**
     * A claim that says the same as the one before stays; one that differs takes its place, and so
     * does whatever comes after a failed one.
     */
    private void claim(long seq, String key, long version, JobEntry job, ClaimEntry claim) {
        Optional<ClaimState> before =
                standing(key).stream().filter(c -> c.scheme() == claim.scheme()).findFirst();
        if (before.isPresent()) {
            if (before.get().failed().isEmpty() && says(before.get(), claim)) {
                return;
            }
            new Withdrawing(sql).claim(seq, before.get().id(), "corrected");
        }
        claim.serials().forEach(serial -> takeOver(seq, job, claim.scheme(), serial));
        insert(seq, key, version, job.reference(), claim);
    }

    private boolean says(ClaimState before, ClaimEntry claim) {
        // What the buyer has was lodged on the days that it has.
        boolean sameDays =
                before.isWithBuyer()
                        || before.installedOn().equals(claim.installedOn())
                                && before.lodgeBy().equals(claim.lodgeBy());
        return sameDays
                && before.buyer().equals(claim.buyer())
                && before.certificates() == claim.certificates()
                && before.expected().equals(claim.promise().toFirm())
                && before.toOwner().equals(claim.promise().toOwner())
                && serials(before.id()).equals(claim.serials().stream().map(Serial::key).toList());
    }

    private List<String> serials(long claim) {
        return sql.list(
                "SELECT serial_key FROM serial WHERE claim = ? ORDER BY place",
                r -> r.getString(1),
                claim);
    }

    /** A serial that another job claimed goes over to the job that says it corrects that one. */
    private void takeOver(long seq, JobEntry job, SchemeName scheme, Serial serial) {
        record Other(long claim, String job, String batch) {}
        sql.first(
                        "SELECT c.id, j.reference, e.name FROM serial s JOIN claim c ON c.id = s.claim"
                                + " JOIN job j ON j.job_key = c.job_key AND j.version = c.version"
                                + " JOIN entry e ON e.seq = c.entry WHERE s.active = 1 AND s.scheme = ? AND s.serial_key = ?",
                        r -> new Other(r.getLong(1), r.getString(2), r.getString(3)),
                        scheme.word(),
                        serial.key())
                .ifPresent(
                        other -> {
                            if (!Keys.names(job.corrects(), other.job())) {
                                throw new LedgerBusyException(
                                        "The serial "
                                                + serial
                                                + " of job "
                                                + job.reference()
                                                + " was claimed meanwhile for job "
                                                + other.job()
                                                + " in batch "
                                                + new BatchWords(sql).of(other.batch())
                                                + ".",
                                        "Prepare the register again.");
                            }
                            new Withdrawing(sql)
                                    .claim(
                                            seq,
                                            other.claim(),
                                            Withdrawing.CORRECTED_BY + job.reference());
                        });
    }

    private void insert(long seq, String key, long version, String reference, ClaimEntry claim) {
        long id = next("SELECT max(id) FROM claim");
        sql.run(
                "INSERT INTO claim VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 1)",
                id,
                seq,
                key,
                version,
                Keys.job(ClaimEntry.reference(reference, claim.scheme())),
                claim.scheme().word(),
                claim.buyer(),
                claim.certificates(),
                claim.installedOn().toString(),
                Sql.text(claim.lodgeBy()),
                claim.promise().toFirm().cents(),
                claim.promise().toOwner().cents(),
                claim.promise().firmGst().cents(),
                Sql.text(claim.promise().due()));
        int place = 1;
        for (Serial serial : claim.serials()) {
            sql.run(
                    "INSERT INTO serial VALUES (?, ?, ?, ?, ?, ?, ?, 1)",
                    id,
                    seq,
                    place++,
                    claim.scheme().word(),
                    serial.seen(),
                    serial.key(),
                    Keys.lookalike(serial));
        }
    }

    private long next(String largest) {
        return sql.number(largest) + 1;
    }
}
