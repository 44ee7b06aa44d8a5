package paperbark.firm;

import java.util.List;
import java.util.Optional;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Phone;

/** The table of makers. */
final class MakersTable {
    static final TableShape SHAPE =
            new TableShape(
                    "makers",
                    List.of("maker"),
                    List.of(
                            "street",
                            "suburb",
                            "state",
                            "postcode",
                            "phone",
                            "email",
                            "claim_costs",
                            "warranty_variant",
                            "entries"));

    private MakersTable() {}

    /** The makers, in order. */
    static List<Maker> read(OpenTable table) {
        TakenNames names = new TakenNames();
        return table.rows().stream().flatMap(row -> maker(row, names).stream()).toList();
    }

    private static Optional<Maker> maker(TableRow row, TakenNames names) {
        Optional<String> name = row.neededText("maker");
        name.ifPresent(n -> names.take(n, row));
        Address address = row.address();
        Optional<Phone> phone = row.phone("phone");
        Optional<Email> email = row.optional("email", Email::parse);
        Optional<String> costs = row.text("claim_costs");
        Optional<String> variant = row.text("warranty_variant");
        Optional<String> entries = row.text("entries");
        return row.build(
                () ->
                        new Maker(
                                name.orElseThrow(),
                                address,
                                phone,
                                email,
                                costs,
                                variant,
                                entries));
    }
}
