package paperbark.output.table;

import static paperbark.output.table.TableCell.flag;
import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.date;
import static paperbark.output.table.TableColumn.flag;
import static paperbark.output.table.TableColumn.text;
import static paperbark.output.table.TableColumn.whole;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Schemes;
import paperbark.entitlement.Step;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.SchemeName;

/** One row a job and scheme that it claims under. */
public final class CertificatesTable {
    private static final List<TableColumn> COLUMNS =
            List.of(
                    text("job", "Job", 13),
                    text("owner", "Owner", 24),
                    text("scheme", "Scheme", 11),
                    text("buyer", "Buyer", 22),
                    whole("zone", "Zone", 8),
                    text("activity", "Activity", 11),
                    whole("certificates", "Certificates", 15),
                    text("standing", "Stands", 11),
                    flag("planned", "Day only planned", 13),
                    date("closing", "Closing date"),
                    text("working", "Working", 52));

    private static final Set<String> SUMS =
            Stream.concat(
                            Schemes.KNOWN.all().stream().flatMap(scheme -> scheme.sums().stream()),
                            Stream.of(Entitlement.FROM_REGISTER, Entitlement.WITH_BUYER))
                    .collect(Collectors.toSet());

    /** A claim with its job. */
    private record Claim(CaseFile file, Entitlement entitlement) {}

    private CertificatesTable() {}

    /** The table of the batch. */
    public static Table of(BatchView view) {
        List<Claim> claims =
                view.cases().stream()
                        .flatMap(f -> f.entitlements().all().stream().map(e -> new Claim(f, e)))
                        .toList();
        Table table =
                new Table(
                        "Certificates",
                        "Certificates",
                        List.of(
                                "A count that could not be worked out is left empty. Schemes are never"
                                        + " added together: their certificates differ in worth. What"
                                        + " is held cannot be claimed until it is mended, and is"
                                        + " counted apart."),
                        COLUMNS,
                        MadeRows.of(claims, c -> row(c.file(), c.entitlement())),
                        List.of());
        return table.withFooters(
                Arrays.stream(SchemeName.values())
                        .flatMap(s -> Stream.of(total(table, s, false), total(table, s, true)))
                        .toList());
    }

    private static List<TableCell> row(CaseFile file, Entitlement entitlement) {
        SchemeName scheme = entitlement.scheme();
        return List.of(
                text(file.job().reference()),
                text(file.job().owner().names()),
                text(scheme.word()),
                text(ClaimFacts.buyer(file, scheme)),
                number(entitlement.zone()),
                text(entitlement.activity()),
                number(entitlement.certificates()),
                text(file.standing(scheme).word()),
                flag(file.isOnPlannedDay(entitlement)),
                TableCell.of(Value.day(entitlement.lastDay())),
                text(working(entitlement)));
    }

    private static TableCell number(Optional<Integer> number) {
        return number.map(TableCell::whole).orElse(TableCell.BLANK);
    }

    private static String working(Entitlement entitlement) {
        // The whole working is a page of the pack; here the last sum must do.
        String steps =
                entitlement.steps().stream()
                        .filter(step -> SUMS.contains(step.label()))
                        .map(CertificatesTable::sentence)
                        .collect(Collectors.joining("; "));
        return entitlement.isDemo()
                ? "With figures invented for the demonstration. " + steps
                : steps;
    }

    private static String sentence(Step step) {
        String how =
                step.working().isEmpty() || step.working().equals(step.result())
                        ? ""
                        : " (" + step.working() + ")";
        return step.label() + ": " + step.result() + how;
    }

    private static List<TableCell> total(Table table, SchemeName scheme, boolean held) {
        String word = scheme.word();
        long sum = ClaimFacts.certificates(table, scheme, held);
        return table.columns().stream()
                .map(
                        column ->
                                switch (column.key()) {
                                    case "job" -> text((held ? "Held " : "Total ") + word);
                                    case "certificates" ->
                                            TableCell.derivedWhole(
                                                    ClaimFacts.sumOfCertificates(scheme, held),
                                                    sum);
                                    default -> TableCell.BLANK;
                                })
                .toList();
    }
}
