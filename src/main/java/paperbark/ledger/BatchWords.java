package paperbark.ledger;

/**
 * A batch as people are told of it: by its name, and by the office that made it where several share
 * the ledger. What an office is called stands behind the id of its output folder.
 */
final class BatchWords {
    private static final String BY_NAME =
            "SELECT p.place FROM progress p JOIN entry e ON e.seq = p.entry WHERE e.name = ?";

    private final Sql sql;

    BatchWords(Sql sql) {
        this.sql = sql;
    }

    /** The words for a batch of that name. */
    String of(String batch) {
        return sql.isShared()
                ? of(batch, sql.first(BY_NAME, r -> r.getString(1), batch).orElse(""))
                : batch;
    }

    /**
     * The words for a batch.
     *
     * @param place the id of its output folder; ids of earlier versions tell no office
     */
    String of(String batch, String place) {
        int name = place.indexOf(' ');
        return sql.isShared() && name > 0
                ? batch + " of office \"" + place.substring(name + 1) + "\""
                : batch;
    }
}
