package paperbark.firm;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Phone;
import paperbark.value.SchemeName;

/** The table of buyers. */
final class BuyersTable {
    static final TableShape SHAPE =
            new TableShape(
                    "buyers",
                    List.of("buyer"),
                    List.of(
                            "abn",
                            "stc_registration",
                            "veec_registration",
                            "street",
                            "suburb",
                            "state",
                            "postcode",
                            "phone",
                            "email",
                            "stc_form",
                            "veec_form",
                            "own"));

    private BuyersTable() {}

    /** The buyers, in order. */
    static List<Buyer> read(Table table) {
        Names names = new Names();
        return table.rows().stream().flatMap(row -> buyer(row, names).stream()).toList();
    }

    private static Optional<Buyer> buyer(TableRow row, Names names) {
        Optional<String> name = row.neededText("buyer");
        name.ifPresent(n -> names.take(n, row));
        Optional<Abn> abn = row.optional("abn", Abn::parse);
        Map<SchemeName, String> registrations =
                byScheme(row, "stc_registration", "veec_registration");
        Address address = row.address();
        Optional<Phone> phone = row.optional("phone", Phone::parse);
        Optional<Email> email = row.optional("email", Email::parse);
        Map<SchemeName, String> forms = byScheme(row, "stc_form", "veec_form");
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
                                own));
    }

    private static Map<SchemeName, String> byScheme(TableRow row, String stc, String veec) {
        Map<SchemeName, String> texts = new EnumMap<>(SchemeName.class);
        row.text(stc).ifPresent(text -> texts.put(SchemeName.STC, text));
        row.text(veec).ifPresent(text -> texts.put(SchemeName.VEEC, text));
        return texts;
    }
}
