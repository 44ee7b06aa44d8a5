package paperbark.output.journal;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import paperbark.output.table.SafeCsv;
import paperbark.value.Money;

/**
 * A journal as people import it: as CSV, and as the plain text that double-entry programs read, one
 * file, accounts declared first.
 */
final class JournalText {
    private static final List<String> HEADINGS =
            List.of("Entry", "Day", "Job", "Account", "Debit", "Credit", "Remark");

    /** How many columns the CSV has. */
    static final int COLUMNS = 7;

    private final StringBuilder text = new StringBuilder();

    /**
     * Begins the plain text.
     *
     * @param title what it is
     * @param note what a bookkeeper must know of all entries
     * @param entries all that it will have, whose accounts are declared
     */
    JournalText(String title, String note, List<Booked> entries) {
        text.append("; ").append(safe(title)).append('\n');
        text.append("; ").append(safe(note)).append("\n\n");
        text.append("commodity $1000.00\n");
        entries.stream()
                .flatMap(e -> e.lines().stream())
                .map(Booked.Line::account)
                .distinct()
                .sorted()
                .forEach(name -> text.append("account ").append(name).append('\n'));
    }

    /** One line a posting, debits and credits in columns of their own. */
    static byte[] csv(List<Booked> entries) {
        List<List<String>> rows = new ArrayList<>();
        int number = 0;
        for (Booked entry : entries) {
            number++;
            for (Booked.Line line : entry.lines()) {
                boolean credit = line.amount().isNegative();
                rows.add(
                        List.of(
                                Integer.toString(number),
                                entry.day().toString(),
                                SafeCsv.text(entry.job()),
                                SafeCsv.text(line.account()),
                                credit ? "" : plain(line.amount()),
                                credit ? plain(Money.ZERO.minus(line.amount())) : "",
                                SafeCsv.text(line.remark())));
            }
        }
        return SafeCsv.of(HEADINGS, rows);
    }

    /** An entry whose lines follow. */
    void begin(LocalDate day, String job, String what, List<String> remarks) {
        text.append('\n').append(day).append(' ').append(safe(job));
        text.append(' ').append(what).append('\n');
        remarks.forEach(r -> text.append("    ; ").append(safe(r)).append('\n'));
    }

    /** A line of the entry that was begun. */
    void line(String account, Money amount, String remark) {
        String said = remark.isEmpty() ? "" : "  ; " + safe(remark);
        text.append("    %-44s  %12s%s\n".formatted(account, "$" + plain(amount), said));
    }

    /** The entry that takes an earlier one back. */
    void takenBack(TakenBack then) {
        then.back()
                .ifPresent(
                        back -> {
                            String remark = Booked.REVERSAL + then.batch();
                            begin(back.day(), back.job(), "taken back", List.of(remark));
                            back.lines().forEach(l -> line(l.account(), l.amount(), ""));
                        });
    }

    byte[] bytes() {
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String plain(Money amount) {
        return amount.amount().toPlainString();
    }

    /** Text on one line, without a sign that the journal would read as its own. */
    private static String safe(String text) {
        return text.codePoints()
                .map(c -> Character.isLetterOrDigit(c) || " .,'$/+-".indexOf(c) >= 0 ? c : '_')
                .mapToObj(Character::toString)
                .collect(Collectors.joining());
    }
}
