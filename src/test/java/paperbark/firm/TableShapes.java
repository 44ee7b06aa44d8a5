package paperbark.firm;

import java.util.List;
import java.util.stream.Stream;

/** The firm's tables and their columns, for the page of the manual that lists them. */
public final class TableShapes {
    private TableShapes() {}

    /**
     * A column of a table.
     *
     * @param isNeeded whether the table cannot be used without it
     */
    public record Column(String name, boolean isNeeded) {}

    /** A table by its name, with all its columns. */
    public record Shape(String table, List<Column> columns) {}

    /** Every table that {@link FirmTablesReader} reads. */
    public static List<Shape> all() {
        return Stream.of(
                        FirmTable.SHAPE,
                        PeopleTable.SHAPE,
                        MakersTable.SHAPE,
                        ProductsTable.SHAPE,
                        SellersTable.SHAPE,
                        BuyersTable.SHAPE,
                        OffersTable.SHAPE,
                        StatePapersTable.SHAPE,
                        WordsTable.SHAPE,
                        AccountsTable.SHAPE)
                .map(TableShapes::shape)
                .toList();
    }

    /** The facts that the table of the firm itself may have a row for. */
    public static List<String> factsOfTheFirm() {
        return FirmTable.FACTS;
    }

    private static Shape shape(TableShape shape) {
        return new Shape(
                shape.name(),
                Stream.concat(
                                shape.needed().stream().map(name -> new Column(name, true)),
                                shape.optional().stream().map(name -> new Column(name, false)))
                        .toList());
    }
}
