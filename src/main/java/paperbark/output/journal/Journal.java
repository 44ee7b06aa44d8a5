package paperbark.output.journal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.AccountRole;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;

/**
 * The sales of the installed jobs of a batch in double entry, with the accounts named by the firm.
 * GST on what buyers pay beyond discounts waits on an account of its own until they pay.
 */
public final class Journal {
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
                    .forEach(then -> then.back().ifPresent(all::add));
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
        return file.doneOn()
                .filter(day -> file.price().isPresent())
                .map(
                        day ->
                                SaleEntry.of(
                                        file,
                                        day,
                                        earlier.getOrDefault(file.job().reference(), List.of())));
    }

    List<Entry> entries() {
        return entries;
    }

    /** One line a posting, debits and credits in columns of their own. */
    public byte[] csv() {
        return JournalText.csv(booked());
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
        JournalText text =
                new JournalText(
                        "Sales of batch " + view.info().id(),
                        "Only installed jobs with a price. Claims that are held are not booked.",
                        booked());
        for (CaseFile file : view.cases()) {
            earlier.getOrDefault(file.job().reference(), List.of()).forEach(text::takenBack);
            entry(file).ifPresent(entry -> sale(text, entry));
        }
        return text.bytes();
    }

    private void sale(JournalText text, Entry entry) {
        text.begin(entry.day(), entry.job(), "heater and installation", entry.remarks());
        entry.postings().forEach(p -> text.line(accounts.get(p.account()), p.amount(), p.remark()));
    }
}
