package paperbark.output.table;

import static paperbark.output.table.TableCell.text;
import static paperbark.output.table.TableColumn.text;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.value.SchemeName;

/** How to read the other tables. */
public final class ReadingTable {
    private static final List<List<TableCell>> ROWS =
            List.of(
                    row(
                            "Totals",
                            "Every total and derived column is a formula. Change a figure and the"
                                    + " totals follow. The figures shown before anything is"
                                    + " recalculated were worked out to the cent by the program."),
                    row(
                            ofSchemes(SchemeName::word),
                            ofSchemes(ReadingTable::explained)
                                    + ". One is not worth the other, so they are never added."),
                    row(
                            "Held",
                            "A stop keeps the paper back. The certificates and the money are listed,"
                                    + " marked held, and counted in no sum but their own. Offers"
                                    + " for them are not compared, and nothing of them is taken off"
                                    + " a price, until the row is mended."),
                    row(
                            "Day only planned",
                            "The heater is not in yet. Count and closing date are those of the planned"
                                    + " day and change with it."),
                    row(
                            "Offers compared",
                            "For each claim the offer taken, the runner-up and the difference, and why"
                                    + " other offers were left out. A buyer fixed in the register"
                                    + " wins; what that costs stands beside it."),
                    row(
                            "Every offer",
                            "The sum of every offer that a claim can take, redone by formulas. Worth"
                                    + " to the firm is after the owner's part, GST and the cost of"
                                    + " waiting."),
                    row(
                            "Expected money",
                            "Price each times certificates, less the buyer's fees. It is what the"
                                    + " offer promises, not what has come. The firm's part by buyer"
                                    + " and week; claim by claim on Expected claims."),
                    row(
                            "Received and overdue",
                            "What the ledger knows of claims made before, where there is one; by buyer"
                                    + " and age on Debtors by age."),
                    row(
                            "GST",
                            "An eleventh of the full price of heater and installation, rounded to the"
                                    + " cent job by job, half a cent up. Certificates that the owner"
                                    + " assigns lower what is paid, not the GST."),
                    row(
                            "GST by quarter",
                            "The same by quarter, under the labels of the activity statement. What is"
                                    + " installed is a sale, whether a claim is held or not; what"
                                    + " is booked is none yet."),
                    row(
                            "Owner registered for GST",
                            "Such an owner who uses the heater in business owes GST on the assignment"
                                    + " and gives whoever takes the certificates a tax invoice for"
                                    + " it. The credit is that buyer's; the firm's only where the"
                                    + " buyers table says that the buyer is the firm itself."),
                    row("GST on top", ClaimFacts.ON_TOP),
                    row("Beyond the discount", "GST on it: " + GstTable.RULE),
                    row("Closing dates", "The last safe day for each deed, the nearest first."),
                    row(
                            "Findings",
                            "What the program noticed. Stop: a paper is held. Check: somebody must"
                                    + " look. Note: worth knowing."),
                    row(
                            "Rules and sources",
                            "The dated rows that the figures rest on. Published: read in the source."
                                    + " Derived: worked out from it. From memory: not verified."
                                    + " Invented: stands in a sample table only."));

    private ReadingTable() {}

    /** The table; the same for every batch. */
    public static Table of() {
        return new Table(
                "Reading",
                "How to read this",
                List.of(),
                List.of(text("word", "Word or sheet", 26), text("meaning", "Meaning", 110)),
                ROWS,
                List.of());
    }

    private static List<TableCell> row(String word, String meaning) {
        return List.of(text(word), text(meaning));
    }

    private static String ofSchemes(Function<SchemeName, String> word) {
        return Arrays.stream(SchemeName.values()).map(word).collect(Collectors.joining(", "));
    }

    private static String explained(SchemeName scheme) {
        String name = scheme.fullName();
        return name.substring(0, 1).toUpperCase(Locale.ROOT)
                + name.substring(1)
                + (scheme.state().isEmpty() ? " (federal)" : "");
    }
}
