package paperbark.ledger;

import java.time.LocalDate;
import java.util.List;

/** How the batches of a ledger stand, and how far each has come on the disk. */
public final class Batches {
    /**
     * A batch as the office folder lists it.
     *
     * @param name of the batch
     * @param register file name of its register
     * @param day day of the run
     * @param filed whether its register is where it stays
     * @param jobs how many jobs
     * @param held how many of them are held still: no later batch has them
     */
    public record BatchState(
            String name, String register, LocalDate day, boolean filed, int jobs, int held) {}

    /**
     * A batch whose folder is not known to be published.
     *
     * @param name of the batch
     * @param staged name of its hidden folder in the output folder
     * @param manifestSha256 hash of its manifest
     */
    public record Unpublished(String name, String staged, String manifestSha256) {}

    private final Sql sql;

    Batches(Sql sql) {
        this.sql = sql;
    }

    /** Batches made from exactly these bytes, newest first. */
    public List<BatchState> of(String registerSha256) {
        return where("AND e.source_sha256 = ?", registerSha256);
    }

    /** The newest batches of an output folder, newest first. */
    public List<BatchState> newest(int howMany, String place) {
        return where(
                "AND e.seq IN (SELECT entry FROM progress WHERE staged <> '' AND place IN (?, '')"
                        + " ORDER BY entry DESC LIMIT ?)",
                place,
                howMany);
    }

    /** Batches of days after a certain one, newest first. */
    public List<BatchState> after(LocalDate day) {
        return where("AND e.day > ?", day.toString());
    }

    /** Published batches of an output folder whose register is not known to be where it stays. */
    public List<BatchState> unfiled(String place) {
        return where("AND p.state = 'published' AND p.place IN (?, '')", place);
    }

    /** Batches of an output folder that are known to be visible there, oldest first. */
    public List<String> publishedIn(String place) {
        return sql.list(
                "SELECT e.name FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " WHERE p.state <> 'committed' AND e.kind = 'batch' AND p.place = ?"
                        + " ORDER BY e.seq",
                r -> r.getString(1),
                place);
    }

    /** Batches of an output folder that were taken in and may still be hidden there. */
    public List<Unpublished> unpublished(String place) {
        return sql.list(
                "SELECT e.name, p.staged, e.detail_sha256 FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " WHERE p.state = 'committed' AND e.kind = 'batch' AND p.place IN (?, '')"
                        + " ORDER BY e.seq",
                r -> new Unpublished(r.getString(1), r.getString(2), r.getString(3)),
                place);
    }

    /** How far every batch of every output folder has come, oldest first. */
    public List<BatchProgress> progress() {
        return sql.list(
                "SELECT e.name, p.place, p.state FROM progress p JOIN entry e ON e.seq = p.entry"
                        + " ORDER BY e.seq",
                r -> new BatchProgress(r.getString(1), r.getString(2), r.getString(3)));
    }

    /** Whether a batch of that name was ever taken in. */
    public boolean isKnown(String batch) {
        return sql.number("SELECT count(*) FROM entry WHERE name = ?", batch) > 0;
    }

    /** Whether a batch was taken in whose manifest has that hash, wherever it is published. */
    public boolean hasManifest(String sha256) {
        return sql.number("SELECT count(*) FROM entry WHERE detail_sha256 = ?", sha256) > 0;
    }

    /** Whether a job of a batch was booked out since. */
    public boolean hasWithdrawn(String batch) {
        return sql.number(
                        "SELECT count(*) FROM job j JOIN entry e ON e.seq = j.entry"
                                + " JOIN withdrawn w ON w.job_key = j.job_key AND w.version >= j.version"
                                + " WHERE e.name = ?",
                        batch)
                > 0;
    }

    /** Notes that the folder of a batch is where people see it. */
    public void notePublished(String batch) {
        note(batch, "published");
    }

    /** Notes that the register of a batch is where it stays. */
    public void noteFiled(String batch) {
        note(batch, "filed");
    }

    private void note(String batch, String state) {
        sql.run(
                "UPDATE progress SET state = ? WHERE entry = (SELECT seq FROM entry WHERE name = ?)",
                state,
                batch);
    }

    private List<BatchState> where(String condition, Object... parameters) {
        return sql.list(
                "SELECT e.name, e.source_name, e.day, p.state, count(j.reference),"
                        + " sum(CASE WHEN j.outcome = 'held' AND NOT EXISTS (SELECT 1 FROM job n"
                        + " WHERE n.job_key = j.job_key AND n.version > j.version)"
                        + " AND NOT EXISTS (SELECT 1 FROM withdrawn w"
                        + " WHERE w.job_key = j.job_key AND w.version = j.version)"
                        + " THEN 1 ELSE 0 END)"
                        + " FROM entry e JOIN progress p ON p.entry = e.seq"
                        + " LEFT JOIN job j ON j.entry = e.seq WHERE e.kind = 'batch' "
                        + condition
                        + " GROUP BY e.seq, e.name, e.source_name, e.day, p.state ORDER BY e.seq DESC",
                r ->
                        new BatchState(
                                r.getString(1),
                                r.getString(2),
                                LocalDate.parse(r.getString(3)),
                                r.getString(4).equals("filed"),
                                r.getInt(5),
                                r.getInt(6)),
                parameters);
    }
}
