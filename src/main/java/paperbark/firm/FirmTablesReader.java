package paperbark.firm;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.TableFiles;

/**
 * Reads the firm's eight tables: firm, people, makers, products, sellers, buyers, offers and
 * state-papers, and its words and accounts where it has tables of them.
 *
 * <p>A row that cannot be used is left out with a finding; a missing table or column refuses them
 * all, after every table has been looked at.
 */
public final class FirmTablesReader {
    private final TableSource source;
    private final List<Finding> findings = new ArrayList<>();

    private FirmTablesReader(TableSource source) {
        this.source = source;
    }

    /**
     * Reads the tables.
     *
     * @param folderOrWorkbook a folder with a CSV file per table, or a workbook with a sheet per
     *     table, named as above
     * @return the tables, or the findings that say why not
     */
    public static Reading<FirmTables> read(Path folderOrWorkbook) {
        return read(TableSource.at(folderOrWorkbook));
    }

    /**
     * Reads tables that are not in files yet.
     *
     * @param tables some or all; one that is missing has no rows
     */
    public static Reading<FirmTables> of(List<TableRows> tables) {
        return read(
                shape ->
                        Reading.of(
                                tables.stream()
                                        .filter(t -> t.name().equals(shape.name()))
                                        .findFirst()
                                        .orElseGet(() -> TableRows.empty(shape.name()))
                                        .sheet(),
                                List.of()));
    }

    static Reading<FirmTables> read(TableSource source) {
        return new FirmTablesReader(source).read();
    }

    private Reading<FirmTables> read() {
        Optional<OpenTable> facts = table(FirmTable.SHAPE);
        Optional<Firm> firm = facts.flatMap(table -> FirmTable.read(table, findings));
        List<Person> people = rows(table(PeopleTable.SHAPE).map(PeopleTable::read));
        Optional<List<Maker>> makers = table(MakersTable.SHAPE).map(MakersTable::read);
        Optional<OpenTable> products = table(ProductsTable.SHAPE);
        List<Seller> sellers = rows(table(SellersTable.SHAPE).map(SellersTable::read));
        Optional<List<Buyer>> buyers = table(BuyersTable.SHAPE).map(BuyersTable::read);
        Optional<OpenTable> offers = table(OffersTable.SHAPE);
        Words words = words();
        List<StatePaper> papers = rows(table(StatePapersTable.SHAPE).map(StatePapersTable::read));
        Map<AccountRole, String> accounts =
                optionalTable(AccountsTable.SHAPE).map(AccountsTable::read).orElse(Map.of());
        // Without makers or buyers every product or offer would be blamed for it.
        List<Product> models =
                rows(makers.flatMap(m -> products.map(t -> ProductsTable.read(t, m))));
        List<Offer> prices = rows(buyers.flatMap(b -> offers.map(t -> OffersTable.read(t, b))));
        firm.flatMap(f -> unknownPreference(f, rows(buyers), facts.orElseThrow()))
                .ifPresent(findings::add);
        List<Finding> inOrder = Finding.inOrder(findings);
        if (firm.isEmpty() || findings.stream().anyMatch(Finding::stops)) {
            return Reading.refused(inOrder);
        }
        return Reading.of(
                new FirmTables(
                        firm.get(),
                        ByName.of(people, Person::name),
                        ByName.of(rows(makers), Maker::name),
                        ByName.of(models, p -> TakenNames.model(p.maker(), p.model())),
                        ByName.of(sellers, Seller::name),
                        ByName.of(rows(buyers), Buyer::name),
                        prices,
                        papers,
                        words,
                        accounts),
                inOrder);
    }

    private static Optional<Finding> unknownPreference(
            Firm firm, List<Buyer> buyers, OpenTable facts) {
        return firm.money()
                .preferredBuyer()
                .filter(
                        name ->
                                buyers.stream()
                                        .noneMatch(
                                                b ->
                                                        TakenNames.key(b.name())
                                                                .equals(TakenNames.key(name))))
                .map(
                        name ->
                                Finding.of(
                                                FindingCode.TABLE_ROW_WRONG,
                                                facts.place(),
                                                "The preferred buyer is none of the buyers table.",
                                                "Write the name as in the buyers table, or add the buyer there.")
                                        .seeing(name));
    }

    /** A table that a firm may do without. */
    private Optional<OpenTable> optionalTable(TableShape shape) {
        Reading<Sheet> reading = source.sheet(shape);
        boolean missing =
                reading.findings().stream().anyMatch(f -> f.code() == FindingCode.TABLE_MISSING);
        return missing || TableFiles.isEmptySheet(reading)
                ? Optional.empty()
                : table(shape, reading);
    }

    /**
     * The words of those tables alone.
     *
     * @param findings takes what is wrong with the table
     */
    public static Words words(Path folderOrWorkbook, List<Finding> findings) {
        FirmTablesReader reader = new FirmTablesReader(TableSource.at(folderOrWorkbook));
        Words words = reader.words();
        findings.addAll(reader.findings);
        return words;
    }

    /**
     * The zone that the firm's clocks show: the one that its table names, or its state's; empty
     * where the table cannot be read. What is wrong with it is told when all tables are read.
     */
    public static Optional<ZoneId> zone(Path folderOrWorkbook) {
        return new FirmTablesReader(TableSource.at(folderOrWorkbook))
                .table(FirmTable.SHAPE)
                .flatMap(FirmTable::zone);
    }

    /** A firm whose words are all known needs no such table. */
    private Words words() {
        return optionalTable(WordsTable.SHAPE).map(WordsTable::read).orElse(Words.SHIPPED);
    }

    private Optional<OpenTable> table(TableShape shape) {
        return table(shape, source.sheet(shape));
    }

    private Optional<OpenTable> table(TableShape shape, Reading<Sheet> reading) {
        Optional<Place> headings = headingsAlone(reading);
        if (headings.isPresent()) {
            findings.add(
                    Finding.of(
                            FindingCode.TABLE_EMPTY,
                            headings.get(),
                            "The table \"" + shape.name() + "\" has no rows yet.",
                            "Fill it in once a job needs what belongs there."));
            return Optional.of(OpenTable.empty(headings.get()));
        }
        List<Finding> rows =
                reading.findings().stream().filter(FirmTablesReader::isAboutARow).toList();
        reading.findings().stream().filter(f -> !isAboutARow(f)).forEach(findings::add);
        rows.forEach(row -> findings.add(leftOut(row)));
        Set<Integer> wrong =
                rows.stream().map(f -> f.place().rowNumber()).collect(Collectors.toSet());
        return reading.result()
                .flatMap(sheet -> OpenTable.open(shape, without(sheet, wrong), findings));
    }

    private static boolean isAboutARow(Finding finding) {
        return finding.code() == FindingCode.ROW_SHORT || finding.code() == FindingCode.ROW_LONG;
    }

    private static Finding leftOut(Finding row) {
        return Finding.of(FindingCode.TABLE_ROW_WRONG, row.place(), row.fact(), row.remedy());
    }

    private static Sheet without(Sheet sheet, Set<Integer> rows) {
        return sheet.with(
                sheet.rows().stream().filter(row -> !rows.contains(row.number())).toList());
    }

    /** An empty register is a mistake, but a firm may have no sellers or offers yet. */
    private static Optional<Place> headingsAlone(Reading<Sheet> reading) {
        return reading.findings().stream()
                .filter(f -> f.code() == FindingCode.REGISTER_EMPTY)
                .map(Finding::place)
                .filter(place -> place instanceof Place.InRow)
                .findFirst();
    }

    private static <T> List<T> rows(Optional<List<T>> read) {
        return read.orElse(List.of());
    }
}
