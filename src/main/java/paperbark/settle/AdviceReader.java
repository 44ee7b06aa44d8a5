package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.ledger.Happening;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.value.Money;
import paperbark.value.Parsed;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Reads the rows of an advice. */
final class AdviceReader {
    private static final Map<String, Happening> STATUSES =
            Map.ofEntries(
                    Map.entry("paid", Happening.PAID),
                    Map.entry("part paid", Happening.PAID),
                    Map.entry("partly paid", Happening.PAID),
                    Map.entry("payment", Happening.PAID),
                    Map.entry("settled", Happening.PAID),
                    Map.entry("reversed", Happening.PAID),
                    Map.entry("reversal", Happening.PAID),
                    Map.entry("lodged", Happening.LODGED),
                    Map.entry("created", Happening.LODGED),
                    Map.entry("submitted", Happening.LODGED),
                    Map.entry("pending", Happening.LODGED),
                    Map.entry("registered", Happening.LODGED),
                    Map.entry("failed", Happening.FAILED),
                    Map.entry("rejected", Happening.FAILED),
                    Map.entry("refused", Happening.FAILED),
                    Map.entry("invalid", Happening.FAILED));

    private final Optional<LocalDate> paidOn;
    private final Optional<String> buyer;
    private final List<Finding> findings = new ArrayList<>();

    /**
     * A reader.
     *
     * @param paidOn the day of lines that name none
     * @param buyer the buyer of lines that name none
     */
    AdviceReader(Optional<LocalDate> paidOn, Optional<String> buyer) {
        this.paidOn = paidOn;
        this.buyer = buyer;
    }

    List<Finding> findings() {
        return findings;
    }

    /** What the rows say; one that cannot be used is left out with a finding. */
    List<Said> read(Sheet sheet, Map<AdviceField, Column> columns) {
        List<Said> all = new ArrayList<>();
        sheet.rows().forEach(row -> said(sheet, columns, row).ifPresent(all::add));
        return all;
    }

    private Optional<Said> said(Sheet sheet, Map<AdviceField, Column> columns, Row row) {
        AdviceRow cells = new AdviceRow(sheet, columns, row, findings);
        Optional<Money> amount = cells.money(AdviceField.AMOUNT);
        Optional<String> status = cells.text(AdviceField.STATUS);
        Optional<Happening> what =
                status.isEmpty()
                        ? Optional.of(Happening.PAID)
                        : cells.value(
                                AdviceField.STATUS,
                                FindingCode.CHOICE_UNKNOWN,
                                AdviceReader::status);
        Optional<LocalDate> day = cells.day(AdviceField.PAID_DATE).or(() -> paidOn);
        Optional<Serial> serial =
                cells.value(AdviceField.SERIAL, FindingCode.SERIAL_WRONG, Serial::parse);
        Optional<SchemeName> scheme =
                cells.value(AdviceField.SCHEME, FindingCode.CHOICE_UNKNOWN, AdviceReader::scheme);
        Optional<Integer> certificates = cells.whole(AdviceField.CERTIFICATES);
        complain(cells, what, amount, day);
        if (!cells.isSound()) {
            return Optional.empty();
        }
        boolean takenBack =
                status.map(s -> s.toLowerCase(Locale.ROOT).startsWith("revers")).orElse(false);
        Money paid = amount.orElse(Money.ZERO);
        return Optional.of(
                new Said(
                        sheet,
                        columns,
                        row.number(),
                        what.orElseThrow(),
                        day.orElseThrow(),
                        takenBack && !paid.isNegative() ? Money.ZERO.minus(paid) : paid,
                        cells.text(AdviceField.CLAIM),
                        cells.text(AdviceField.BUYER_REFERENCE),
                        cells.text(AdviceField.JOB),
                        serial,
                        scheme,
                        certificates,
                        cells.text(AdviceField.REASON).orElse(""),
                        cells.text(AdviceField.BUYER).or(() -> buyer)));
    }

    private static void complain(
            AdviceRow cells,
            Optional<Happening> what,
            Optional<Money> amount,
            Optional<LocalDate> day) {
        if (!cells.isSound()) {
            return;
        }
        if (day.isEmpty()) {
            cells.refuse(
                    AdviceField.PAID_DATE,
                    FindingCode.DATE_UNREADABLE,
                    "The line has no day.",
                    "Add the day of the payment to the line, or name it with --paid-on.");
        }
        if (what.equals(Optional.of(Happening.PAID)) && amount.map(Money::isZero).orElse(true)) {
            cells.refuse(
                    AdviceField.AMOUNT,
                    FindingCode.MONEY_UNREADABLE,
                    "The line says neither what was paid nor that the claim was lodged or failed.",
                    "Add the amount, or the status lodged or failed.");
        }
    }

    private static Parsed<Happening> status(String text) {
        Happening known = STATUSES.get(text.toLowerCase(Locale.ROOT).replace('-', ' ').strip());
        return known == null
                ? Parsed.bad(
                        "The word is not one that this column knows.",
                        "Type paid, lodged, failed or reversed.")
                : Parsed.ok(known);
    }

    private static Parsed<SchemeName> scheme(String text) {
        return Arrays.stream(SchemeName.values())
                .filter(s -> text.toUpperCase(Locale.ROOT).matches(s.word() + "S?"))
                .findFirst()
                .map(Parsed::ok)
                .orElse(Parsed.bad("The scheme is not known.", "Type STC or VEEC."));
    }
}
