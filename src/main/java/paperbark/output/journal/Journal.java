package paperbark.output.journal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.firm.AccountRole;
import paperbark.job.Stage;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.table.SafeCsv;
import paperbark.value.Money;

/**
 * The sales of the installed jobs of a batch in double entry, with the accounts named by the firm.
 * GST on what buyers pay beyond discounts waits on an account of its own until they pay.
 */
public final class Journal {
    private static final List<String> HEADINGS =
            List.of("Entry", "Day", "Job", "Account", "Debit", "Credit", "Remark");

    private final BatchView view;
    private final Map<AccountRole, String> accounts;
    private final List<Entry> entries;

    /**
     * The journal of a batch.
     *
     * @param accounts the name of every account
     */
    public Journal(BatchView view, Map<AccountRole, String> accounts) {
        this.view = view;
        this.accounts = accounts;
        this.entries = view.cases().stream().flatMap(file -> entry(file).stream()).toList();
    }

    private static Optional<Entry> entry(CaseFile file) {
        return file.job()
                .installedOn()
                .filter(day -> file.job().stage() == Stage.INSTALLED)
                .filter(day -> file.price().isPresent())
                .map(day -> SaleEntry.of(file, day));
    }

    List<Entry> entries() {
        return entries;
    }

    /** One line a posting, debits and credits in columns of their own. */
    public byte[] csv() {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            String number = Integer.toString(i + 1);
            for (Posting posting : entry.postings()) {
                Money amount = posting.amount();
                boolean credit = amount.isNegative();
                rows.add(
                        List.of(
                                number,
                                entry.day().toString(),
                                SafeCsv.text(entry.job()),
                                SafeCsv.text(accounts.get(posting.account())),
                                credit ? "" : plain(amount),
                                credit ? plain(Money.ZERO.minus(amount)) : "",
                                SafeCsv.text(remark(entry, posting))));
            }
        }
        return SafeCsv.of(HEADINGS, rows);
    }

    /** What is said of the whole entry stands with its first line. */
    private static String remark(Entry entry, Posting posting) {
        List<String> all = new ArrayList<>();
        if (!posting.remark().isEmpty()) {
            all.add(posting.remark());
        }
        if (posting == entry.postings().get(0)) {
            all.addAll(entry.remarks());
        }
        return String.join(" ", all);
    }

    /**
     * The same as plain text that double-entry programs read: one file, accounts declared first.
     */
    public byte[] plainText() {
        StringBuilder text = new StringBuilder();
        text.append("; Sales of batch ").append(safe(view.info().id())).append('\n');
        text.append("; Only installed jobs with a price. Claims that are held are not booked.\n\n");
        text.append("commodity $1000.00\n");
        entries.stream()
                .flatMap(e -> e.postings().stream())
                .map(p -> accounts.get(p.account()))
                .distinct()
                .sorted()
                .forEach(name -> text.append("account ").append(name).append('\n'));
        for (Entry entry : entries) {
            text.append('\n').append(entry.day()).append(' ').append(safe(entry.job()));
            text.append(" heater and installation\n");
            entry.remarks().forEach(r -> text.append("    ; ").append(safe(r)).append('\n'));
            entry.postings().forEach(p -> text.append(line(p)).append('\n'));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private String line(Posting posting) {
        String remark = posting.remark().isEmpty() ? "" : "  ; " + safe(posting.remark());
        return "    %-44s  %12s%s"
                .formatted(accounts.get(posting.account()), "$" + plain(posting.amount()), remark);
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
