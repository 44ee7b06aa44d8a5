package paperbark.firm;

import java.util.List;
import java.util.stream.Stream;
import paperbark.sheet.ColumnNames;

/**
 * The name and headings of one of the firm's tables.
 *
 * @param name the sheet's name, and with {@code .csv} the file's
 * @param needed headings without which the table cannot be used
 * @param optional headings that may be absent
 */
record TableShape(String name, List<String> needed, List<String> optional) {
    /** Columns that any table may have for the firm's own use. */
    private static final List<String> REMARKS = List.of("note", "notes");

    /** Those of the firm's own tables that this room reads. */
    static List<TableShape> all() {
        return List.of(
                FirmTable.SHAPE,
                PeopleTable.SHAPE,
                MakersTable.SHAPE,
                ProductsTable.SHAPE,
                SellersTable.SHAPE,
                BuyersTable.SHAPE,
                OffersTable.SHAPE,
                StatePapersTable.SHAPE,
                AccountsTable.SHAPE,
                WordsTable.SHAPE);
    }

    /** Whether the heading is one of this table's, whatever its case, spaces and punctuation. */
    boolean knows(String heading) {
        String normal = ColumnNames.normal(heading);
        return headings().anyMatch(h -> ColumnNames.normal(h).equals(normal));
    }

    /** The table's own name of a heading of the firm, or the heading itself when it has none. */
    String ownName(String heading) {
        String normal = ColumnNames.normal(heading);
        return headings()
                .filter(h -> ColumnNames.normal(h).equals(normal))
                .findFirst()
                .orElse(heading);
    }

    /** All headings, without those for remarks. */
    List<String> own() {
        return Stream.of(needed, optional).flatMap(List::stream).toList();
    }

    private Stream<String> headings() {
        return Stream.of(needed, optional, REMARKS).flatMap(List::stream);
    }
}
