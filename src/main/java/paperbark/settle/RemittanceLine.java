package paperbark.settle;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.finding.Place;
import paperbark.ledger.AdviceLine;
import paperbark.ledger.AdviceStatus;
import paperbark.sheet.Column;
import paperbark.sheet.Sheet;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/**
 * What one row of an advice says.
 *
 * @param sheet where it stands
 * @param columns the columns of the advice by field
 * @param row its row
 * @param what paid, lodged or failed
 * @param day day of the payment or notice
 * @param amount negative for a reversal; nothing for a notice
 * @param claim our own name for the claim, or whatever stands in its place
 * @param buyerReference the buyer's name for it
 * @param job the firm's job number
 * @param serial serial of a part
 * @param scheme which certificates
 * @param certificates how many
 * @param reason what the buyer says of it
 * @param buyer who pays
 */
record RemittanceLine(
        Sheet sheet,
        Map<AdviceField, Column> columns,
        int row,
        AdviceStatus what,
        LocalDate day,
        Money amount,
        Optional<String> claim,
        Optional<String> buyerReference,
        Optional<String> job,
        Optional<Serial> serial,
        Optional<SchemeName> scheme,
        Optional<Integer> certificates,
        String reason,
        Optional<String> buyer) {

    /** The cell of a field; the whole row where the advice has no such column. */
    Place place(AdviceField field) {
        Column column = columns.get(field);
        return column == null ? sheet.place(row) : sheet.place(column, row);
    }

    /** The reference that the line is known by, whoever gave it. */
    String reference() {
        return Stream.of(claim, buyerReference)
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" "));
    }

    /**
     * The line for the ledger.
     *
     * @param nth counts lines of one file that say the same, from 1
     */
    AdviceLine line(int nth) {
        return new AdviceLine(key(nth), row, day, amount, reference());
    }

    /** The same line in another file has the same key. */
    String key(int nth) {
        String all =
                String.join(
                        "\u001f",
                        what.name(),
                        day.toString(),
                        String.valueOf(amount.cents()),
                        reference(),
                        job.orElse(""),
                        serial.map(Serial::key).orElse(""),
                        scheme.map(SchemeName::word).orElse(""),
                        String.valueOf(nth));
        return DigestUtils.sha256Hex(all);
    }
}
