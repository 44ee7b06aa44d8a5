package paperbark.firm;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.value.Parsed;

/** The table of accounts, which a firm has when it wants the journal. */
final class AccountsTable {
    static final TableShape SHAPE =
            new TableShape("accounts", List.of("use", "account"), List.of());

    private AccountsTable() {}

    /** The name of every account; one that the table lacks has its usual name. */
    static Map<AccountRole, String> read(OpenTable table) {
        Map<AccountRole, String> accounts = new EnumMap<>(AccountRole.class);
        for (AccountRole role : AccountRole.values()) {
            accounts.put(role, role.usualName());
        }
        TakenNames names = new TakenNames();
        for (TableRow row : table.rows()) {
            Optional<AccountRole> role =
                    row.needed("use", CellText.oneOf(AccountRole.values(), AccountRole::word));
            Optional<String> account = row.needed("account", AccountsTable::name);
            role.ifPresent(r -> names.take(r.word(), row));
            row.build(() -> accounts.put(role.orElseThrow(), account.orElseThrow()));
        }
        return Collections.unmodifiableMap(accounts);
    }

    // A plain-text journal ends a name at two spaces or a semicolon and reads brackets as its own.
    private static Parsed<String> name(String text) {
        return text.matches("[\\p{L}\\p{N}](?:[\\p{L}\\p{N}:.,&'/+-]| (?! )){0,99}")
                ? Parsed.ok(text)
                : Parsed.bad(
                        "The name has a sign that a journal would read as its own.",
                        "Use letters, digits, single spaces and : . , & ' / + - for an account.");
    }
}
