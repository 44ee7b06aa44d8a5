package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.disk.FileNames;
import paperbark.disk.Staging;
import paperbark.ledger.ClaimEntry;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.PaperKind;
import paperbark.output.form.Entries;
import paperbark.output.index.IndexView;
import paperbark.output.index.TypingPage;
import paperbark.output.index.TypingView;
import paperbark.output.table.SafeCsv;
import paperbark.value.SchemeName;

/**
 * Writes what makers and buyers take as entries: a page a job and recipient to type from, and a
 * table a recipient to send. Only of papers that this batch prints for installed jobs, and of
 * claims that it makes.
 */
public final class EntryPages {
    /** The folder in a batch. */
    static final String FOLDER = "entries/";

    private final BatchView view;
    private final Entries entries;
    private final TypingPage typing = new TypingPage();
    private final Map<String, String> slugs = new HashMap<>();
    private final Map<String, Table> tables = new LinkedHashMap<>();
    private final Map<String, List<IndexView.Workbook>> pages = new HashMap<>();
    private final Map<String, byte[]> files = new TreeMap<>();

    private EntryPages(BatchView view, Entries entries) {
        this.view = view;
        this.entries = entries;
    }

    /** A table of one recipient, whose list gives it its headings. */
    private record Table(String recipient, List<String> headings, List<List<String>> rows) {}

    /**
     * What the batch's page leads to.
     *
     * @param tables tables to send
     * @param pages pages to type from, by the name of the job's pack
     */
    record Made(List<IndexView.Workbook> tables, Map<String, List<IndexView.Workbook>> pages) {
        /** Nothing, where no recipient takes entries. */
        static final Made NONE = new Made(List.of(), Map.of());
    }

    /** Makes and writes them. */
    static Made write(BatchView view, Entries entries, Staging staging) throws IOException {
        EntryPages pages = new EntryPages(view, entries);
        for (CaseFile file : view.cases()) {
            pages.add(file);
        }
        List<IndexView.Workbook> tables = new ArrayList<>();
        for (Map.Entry<String, Table> table : pages.tables.entrySet()) {
            Table of = table.getValue();
            pages.files.put(table.getKey(), SafeCsv.of(of.headings(), of.rows()));
            tables.add(
                    new IndexView.Workbook(
                            table.getKey(), "Entries for " + of.recipient() + " (table)"));
        }
        for (Map.Entry<String, byte[]> file : pages.files.entrySet()) {
            staging.write(file.getKey(), file.getValue());
        }
        return new Made(tables, pages.pages);
    }

    private void add(CaseFile file) {
        if (!file.job().isBooked() && isPrinted(file, PaperKind.WARRANTY)) {
            String maker = file.job().heater().maker().map(m -> m.name()).orElse("");
            entries.ofWarranty(file)
                    .ifPresent(e -> add(file, "maker", maker, PaperKind.WARRANTY.title(), "", e));
        }
        for (ClaimEntry claim : LedgerLines.claims(file)) {
            SchemeName scheme = claim.scheme();
            if (isPrinted(file, PaperKind.of(scheme))) {
                String about = "Claim " + ClaimEntry.reference(file.job().reference(), scheme);
                entries.ofClaim(file, scheme)
                        .ifPresent(
                                e ->
                                        add(
                                                file,
                                                "buyer",
                                                claim.buyer(),
                                                about,
                                                ", " + scheme.word(),
                                                e));
            }
        }
    }

    private static boolean isPrinted(CaseFile file, PaperKind kind) {
        return file.papers().stream()
                .anyMatch(p -> p.kind() == kind && p.isPrinted() && !p.isBlocked());
    }

    private void add(
            CaseFile file,
            String kind,
            String recipient,
            String about,
            String label,
            Entries.Filled filled) {
        String slug = slug(kind, recipient);
        if (filled.page()) {
            String ending = label.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
            String name = folder(file.packFile()) + slug + ending + ".html";
            files.put(name, page(file, recipient, about, filled));
            pages.computeIfAbsent(file.packFile(), f -> new ArrayList<>())
                    .add(new IndexView.Workbook(name, recipient + label));
        }
        if (filled.table()) {
            tables.computeIfAbsent(
                            FOLDER + slug + ".csv",
                            f ->
                                    new Table(
                                            recipient,
                                            filled.all().stream()
                                                    .map(Entries.Entry::heading)
                                                    .toList(),
                                            new ArrayList<>()))
                    .rows()
                    .add(SafeCsv.cells(filled.all().stream().map(Entries.Entry::value).toList()));
        }
    }

    private byte[] page(CaseFile file, String recipient, String about, Entries.Filled filled) {
        return typing.of(
                        new TypingView(
                                view.firm().name(),
                                view.info().id(),
                                file.job().reference(),
                                file.job().owner().names().orElse(""),
                                recipient,
                                about,
                                "../../index.html",
                                filled.all().stream()
                                        .map(e -> new TypingView.Line(e.heading(), e.value()))
                                        .toList()))
                .getBytes(StandardCharsets.UTF_8);
    }

    /** Whether a file of a batch is a page of the job whose pack that is. */
    public static boolean isOf(String file, String pack) {
        return file.startsWith(folder(pack));
    }

    private static String folder(String pack) {
        String name = pack.substring(pack.lastIndexOf('/') + 1);
        return FOLDER + name.substring(0, name.lastIndexOf('.')) + "/";
    }

    /** A name that no other recipient has. */
    private String slug(String kind, String recipient) {
        return slugs.computeIfAbsent(
                kind + " " + recipient,
                k -> {
                    String name = FileNames.slug(recipient.toLowerCase(Locale.ROOT));
                    Optional<String> free = Optional.of(name).filter(n -> !slugs.containsValue(n));
                    return free.orElse(name + "-" + slugs.size());
                });
    }
}
