package paperbark.settle;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.AdviceFiles;
import paperbark.batch.BuyerPayments;
import paperbark.batch.CopySource;
import paperbark.batch.Ending;
import paperbark.batch.MarkedCopy;
import paperbark.batch.SideProducts;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.disk.Hashes;
import paperbark.finding.Finding;
import paperbark.firm.FirmTablesReader;
import paperbark.firm.Words;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.output.table.SafeCsv;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.ReadList;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.sheet.SheetRule;
import paperbark.value.Days;
import paperbark.value.Money;

/** Settles a buyer's payment advice: from the file to the ledger and back to people. */
public final class SettleDesk {
    private static final List<String> HEADINGS =
            List.of(
                    "Row",
                    "Outcome",
                    "Day",
                    "Amount",
                    "Of it the firm's",
                    "Of it the owner's",
                    "Of it nobody's yet",
                    "Claim",
                    "Job",
                    "Scheme",
                    "Buyer",
                    "Expected",
                    "To the owner",
                    "Received",
                    "Outstanding",
                    "Matched by",
                    "Reason");

    private SettleDesk() {}

    /**
     * What is to be done.
     *
     * @param advice the file
     * @param sheet the sheet wanted; empty takes the one whose headings match best
     * @param tables folder or workbook of the firm's tables, for the headings
     * @param rules folder of its newer rule tables
     * @param ledger the ledger
     * @param defaults what lines mean that do not say it
     * @param out folder of the marked copy and the list of outcomes
     * @param today day of the run
     * @param at moment of the run, for people only
     * @param version version of the program
     */
    public record Order(
            Path advice,
            Optional<String> sheet,
            Path tables,
            Optional<Path> rules,
            LedgerPlace ledger,
            Advice.Defaults defaults,
            Path out,
            LocalDate today,
            Instant at,
            String version) {}

    /**
     * What came of it.
     *
     * @param ending how it ended
     * @param lines what became of each line
     * @param findings in reading order
     * @param written the files written
     */
    public record Result(
            Ending ending, List<SettledLine> lines, List<Finding> findings, List<Path> written) {}

    /**
     * Settles the advice, whole or not at all. The same lines a second time change nothing.
     *
     * @throws IOException when a file cannot be read or written
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public static Result settle(Order order) throws IOException {
        List<Finding> findings = new ArrayList<>();
        ColumnNames<AdviceField> names =
                HeadingTable.of(
                        List.of(AdviceField.values()), "advice-columns", order.tables(), findings);
        Words words = FirmTablesReader.words(order.tables(), findings);
        Reading<ReadList> list =
                SheetReader.readAll(order.advice(), names::knows, order.sheet(), SheetRule.NONE);
        Optional<Sheet> sheet = list.result().map(l -> l.sheets().get(0));
        findings.addAll(list.findings());
        Optional<Reading<Map<AdviceField, Column>>> columns =
                sheet.map(s -> ColumnMap.of(s, names));
        columns.ifPresent(c -> findings.addAll(c.findings()));
        if (columns.flatMap(Reading::result).isEmpty()) {
            return new Result(Ending.REFUSED, List.of(), Finding.inOrder(findings), List.of());
        }
        Optional<Finding> lacking =
                AdviceReader.lacking(
                        sheet.orElseThrow(),
                        columns.flatMap(Reading::result).orElseThrow(),
                        order.defaults());
        if (lacking.isPresent()) {
            findings.add(lacking.get());
            return new Result(Ending.HELD, List.of(), Finding.inOrder(findings), List.of());
        }
        AdviceBook.Source source = source(order);
        try (Ledger ledger = Ledger.open(order.ledger())) {
            ledger.verify();
            Advice.Settled settled =
                    Advice.settle(
                            sheet.orElseThrow(),
                            columns.flatMap(Reading::result).orElseThrow(),
                            source,
                            ledger,
                            new Advice.Firm(
                                    words, new BuyerPayments(order.tables(), order.rules())::of),
                            order.defaults());
            AdviceFiles.complete(ledger, AdviceFiles.beside(order.ledger()));
            findings.addAll(settled.findings());
            List<Finding> ordered = Finding.inOrder(findings);
            SideProducts beside = new SideProducts(source.file());
            List<Path> written =
                    write(
                            order,
                            CopySource.of(order.advice(), list.result().orElseThrow()),
                            settled.lines(),
                            ordered,
                            beside);
            findings.addAll(beside.findings());
            return new Result(ending(settled), settled.lines(), Finding.inOrder(findings), written);
        }
    }

    private static AdviceBook.Source source(Order order) throws IOException {
        return new AdviceBook.Source(
                order.advice().getFileName().toString(),
                Hashes.sha256(order.advice()),
                order.today(),
                order.at(),
                order.version());
    }

    private static Ending ending(Advice.Settled settled) {
        boolean nothingNew =
                !settled.lines().isEmpty()
                        && settled.lines().stream()
                                .allMatch(l -> l.ending() == SettledLine.Ending.SEEN);
        if (settled.needsPerson()) {
            return Ending.HELD;
        }
        return nothingNew ? Ending.ALREADY : Ending.DONE;
    }

    private static List<Path> write(
            Order order,
            CopySource copied,
            List<SettledLine> lines,
            List<Finding> findings,
            SideProducts beside)
            throws IOException {
        String name = FileNames.slug(FileNames.stem(order.advice()));
        Map<String, byte[]> contents = new LinkedHashMap<>();
        // The money is in the ledger by now, so nothing that fails here may look as if it were not.
        beside.make(
                        name + "-settled.xlsx",
                        () -> {
                            MarkedCopy copy = MarkedCopy.of(copied, findings);
                            beside.note(copy.noticed());
                            return copy.content();
                        })
                .ifPresent(copy -> contents.put(".xlsx", copy));
        contents.put(
                ".csv",
                SafeCsv.of(
                        HEADINGS,
                        lines.stream().map(SettleDesk::cells).map(SafeCsv::cells).toList()));
        // What an earlier run said of the advice stays: a second one only says that it was seen.
        Map<String, Path> files = FileNames.freeFor(contents, order.out(), name + "-settled");
        for (Map.Entry<String, Path> file : files.entrySet()) {
            Disk.replace(file.getValue(), contents.get(file.getKey()));
        }
        return List.copyOf(files.values());
    }

    private static List<String> cells(SettledLine line) {
        Optional<ClaimState> claim = line.claim();
        return List.of(
                String.valueOf(line.row()),
                line.ending().word(),
                Days.show(line.day()),
                plain(Optional.of(line.amount())),
                plain(line.firms()),
                plain(line.owners()),
                plain(line.nobodys()),
                claim.map(ClaimState::reference).orElse(""),
                claim.map(ClaimState::job).orElse(""),
                claim.map(c -> c.scheme().word()).orElse(""),
                claim.map(ClaimState::buyer).orElse(""),
                plain(claim.map(ClaimState::expected)),
                plain(claim.map(ClaimState::toOwner)),
                plain(claim.map(ClaimState::received)),
                plain(claim.map(ClaimState::outstanding)),
                line.how(),
                line.reason());
    }

    private static String plain(Optional<Money> amount) {
        return amount.map(a -> a.amount().toPlainString()).orElse("");
    }
}
