package paperbark.firm;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Phone;
import paperbark.value.SchemeName;

/** The table of buyers. */
final class BuyersTable {
    private static final String REGISTRATION = "_registration";
    private static final String FORM = "_form";

    static final TableShape SHAPE =
            new TableShape(
                    "buyers",
                    List.of("buyer"),
                    Stream.of(
                                    Stream.of("abn"),
                                    columns(REGISTRATION),
                                    Stream.of(
                                            "street",
                                            "suburb",
                                            "state",
                                            "postcode",
                                            "phone",
                                            "email"),
                                    columns(FORM),
                                    Stream.of("entries", "own"))
                            .flatMap(all -> all)
                            .toList());

    private BuyersTable() {}

    /** The buyers, in order. */
    static List<Buyer> read(OpenTable table) {
        TakenNames names = new TakenNames();
        return table.rows().stream().flatMap(row -> buyer(row, names).stream()).toList();
    }

    private static Optional<Buyer> buyer(TableRow row, TakenNames names) {
        Optional<String> name = row.neededText("buyer");
        name.ifPresent(n -> names.take(n, row));
        Optional<Abn> abn = row.optional("abn", Abn::parse);
        Map<SchemeName, String> registrations = byScheme(row, REGISTRATION);
        Address address = row.address();
        Optional<Phone> phone = row.phone("phone");
        Optional<Email> email = row.optional("email", Email::parse);
        Map<SchemeName, String> forms = byScheme(row, FORM);
        Optional<String> entries = row.text("entries");
        boolean own = row.optional("own", CellText::yesNo).orElse(false);
        return row.build(
                () ->
                        new Buyer(
                                name.orElseThrow(),
                                abn,
                                registrations,
                                address,
                                phone,
                                email,
                                forms,
                                entries,
                                own));
    }

    /** A column a scheme. */
    private static Stream<String> columns(String what) {
        return Arrays.stream(SchemeName.values()).map(scheme -> scheme.key() + what);
    }

    private static Map<SchemeName, String> byScheme(TableRow row, String what) {
        Map<SchemeName, String> texts = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            row.text(scheme.key() + what).ifPresent(text -> texts.put(scheme, text));
        }
        return texts;
    }
}
