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

    /** How many columns the CSV has. */
    static final int COLUMNS = 7;

    private final BatchView view;
    private final Map<AccountRole, String> accounts;
    private final List<Entry> entries;

    private final Map<String, List<TakenBack>> earlier;

    /**
     * The journal of a batch.
     *
     * @param accounts the name of every account
     * @param earlier the entries of earlier journals that are booked anew or not at all, by job
     */
    public Journal(
            BatchView view,
            Map<AccountRole, String> accounts,
            Map<String, List<TakenBack>> earlier) {
        this.view = view;
        this.accounts = accounts;
        this.earlier = earlier;
        this.entries = view.cases().stream().flatMap(file -> entry(file).stream()).toList();
    }

    /** What is taken back goes before what is booked in its place. */
    private List<Booked> booked() {
        List<Booked> all = new ArrayList<>();
        for (CaseFile file : view.cases()) {
            earlier.getOrDefault(file.job().reference(), List.of())
                    .forEach(then -> all.add(then.entry().back(then.batch())));
            entry(file).map(this::named).ifPresent(all::add);
        }
        return all;
    }

    /**
     * With the names of the firm's accounts; what is said of the whole stands with the first line.
     */
    private Booked named(Entry entry) {
        return new Booked(
                entry.day(),
                entry.job(),
                false,
                entry.postings().stream()
                        .map(
                                p ->
                                        new Booked.Line(
                                                accounts.get(p.account()),
                                                p.amount(),
                                                remark(entry, p)))
                        .toList());
    }

    private Optional<Entry> entry(CaseFile file) {
        return file.job()
                .installedOn()
                .filter(day -> file.job().stage() == Stage.INSTALLED)
                .filter(day -> file.price().isPresent())
                .map(day -> SaleEntry.of(file, day, isBookedAnew(file)));
    }

    private boolean isBookedAnew(CaseFile file) {
        return !earlier.getOrDefault(file.job().reference(), List.of()).isEmpty();
    }

    List<Entry> entries() {
        return entries;
    }

    /** One line a posting, debits and credits in columns of their own. */
    public byte[] csv() {
        List<List<String>> rows = new ArrayList<>();
        int number = 0;
        for (Booked entry : booked()) {
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
        booked().stream()
                .flatMap(e -> e.lines().stream())
                .map(Booked.Line::account)
                .distinct()
                .sorted()
                .forEach(name -> text.append("account ").append(name).append('\n'));
        for (CaseFile file : view.cases()) {
            earlier.getOrDefault(file.job().reference(), List.of())
                    .forEach(then -> takenBack(text, then));
            entry(file).ifPresent(entry -> sale(text, entry));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void takenBack(StringBuilder text, TakenBack then) {
        Booked back = then.entry().back(then.batch());
        text.append('\n').append(back.day()).append(' ').append(safe(back.job()));
        text.append(" taken back\n    ; ")
                .append(safe(Booked.REVERSAL + then.batch()))
                .append('\n');
        back.lines().forEach(l -> text.append(line(l.account(), l.amount(), "")).append('\n'));
    }

    private void sale(StringBuilder text, Entry entry) {
        text.append('\n').append(entry.day()).append(' ').append(safe(entry.job()));
        text.append(" heater and installation\n");
        entry.remarks().forEach(r -> text.append("    ; ").append(safe(r)).append('\n'));
        entry.postings()
                .forEach(
                        p ->
                                text.append(line(accounts.get(p.account()), p.amount(), p.remark()))
                                        .append('\n'));
    }

    private static String line(String account, Money amount, String remark) {
        String said = remark.isEmpty() ? "" : "  ; " + safe(remark);
        return "    %-44s  %12s%s".formatted(account, "$" + plain(amount), said);
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
