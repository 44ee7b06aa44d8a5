package paperbark.output.journal;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import paperbark.output.table.SafeCsv;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * An entry as a journal has it, with the accounts as the firm called them then.
 *
 * @param day of the entry
 * @param job the firm's job number
 * @param reversal whether it takes an earlier entry back
 * @param lines debits, and below zero credits, that add up to nothing
 */
public record Booked(LocalDate day, String job, boolean reversal, List<Line> lines) {
    /** How the remark of an entry begins that takes another back. */
    static final String REVERSAL = "Takes back the entry in batch ";

    /** Keeps the lines from being changed. */
    public Booked {
        lines = List.copyOf(lines);
    }

    /**
     * One line.
     *
     * @param account its name
     * @param amount a debit, or below zero a credit
     * @param remark may be empty
     */
    public record Line(String account, Money amount, String remark) {}

    /** The entry that takes this one back, on the same day, so that every period adds up. */
    Booked back(String batch) {
        String remark = REVERSAL + batch + ".";
        return new Booked(
                day,
                job,
                true,
                lines.stream()
                        .map(l -> new Line(l.account(), Money.ZERO.minus(l.amount()), remark))
                        .toList());
    }

    /** The discount that was booked for the claim of a scheme; empty where none was booked. */
    public Optional<Money> discount(SchemeName scheme) {
        String what = SaleEntry.what(scheme);
        List<Line> ofClaim =
                lines.stream()
                        .filter(l -> l.remark().equals(what) || l.remark().startsWith(what + ","))
                        .toList();
        return ofClaim.isEmpty()
                ? Optional.empty()
                : Optional.of(ofClaim.stream().map(Line::amount).reduce(Money.ZERO, Money::plus));
    }

    /** The last entry of each job in a journal's CSV; none where it is no journal of ours. */
    public static Map<String, Booked> lastOfEach(byte[] csv) {
        Map<String, List<CSVRecord>> rows = new HashMap<>();
        String text = new String(csv, StandardCharsets.UTF_8).replaceFirst("^\uFEFF", "");
        try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(text))) {
            for (CSVRecord row : parser) {
                if (row.size() == JournalText.COLUMNS && row.getRecordNumber() > 1) {
                    List<CSVRecord> entry =
                            rows.computeIfAbsent(
                                    SafeCsv.bare(row.get(2)), job -> new ArrayList<>());
                    if (!entry.isEmpty() && !entry.get(0).get(0).equals(row.get(0))) {
                        entry.clear();
                    }
                    entry.add(row);
                }
            }
            Map<String, Booked> last = new HashMap<>();
            rows.forEach((job, entry) -> last.put(job, of(entry)));
            return last;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (UncheckedIOException | DateTimeException | IllegalArgumentException notOurs) {
            return Map.of();
        }
    }

    private static Booked of(List<CSVRecord> rows) {
        return new Booked(
                LocalDate.parse(rows.get(0).get(1)),
                SafeCsv.bare(rows.get(0).get(2)),
                rows.get(0).get(6).startsWith(REVERSAL),
                rows.stream()
                        .map(
                                r ->
                                        new Line(
                                                SafeCsv.bare(r.get(3)),
                                                money(r.get(4)).minus(money(r.get(5))),
                                                SafeCsv.bare(r.get(6))))
                        .toList());
    }

    private static Money money(String cell) {
        return cell.isEmpty() ? Money.ZERO : Money.of(cell);
    }
}
