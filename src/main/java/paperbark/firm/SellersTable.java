package paperbark.firm;

import java.util.List;
import java.util.Optional;
import paperbark.value.Address;
import paperbark.value.Phone;

/** The table of sellers. */
final class SellersTable {
    static final TableShape SHAPE =
            new TableShape(
                    "sellers",
                    List.of("seller"),
                    List.of("street", "suburb", "state", "postcode", "phone"));

    private SellersTable() {}

    /** The sellers, in order. */
    static List<Seller> read(OpenTable table) {
        TakenNames names = new TakenNames();
        return table.rows().stream().flatMap(row -> seller(row, names).stream()).toList();
    }

    private static Optional<Seller> seller(TableRow row, TakenNames names) {
        Optional<String> name = row.neededText("seller");
        name.ifPresent(n -> names.take(n, row));
        Address address = row.address();
        Optional<Phone> phone = row.phone("phone");
        return row.build(() -> new Seller(name.orElseThrow(), address, phone));
    }
}
