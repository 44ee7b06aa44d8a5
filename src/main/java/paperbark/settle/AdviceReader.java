package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Words;
import paperbark.ledger.AdviceStatus;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.value.Money;
import paperbark.value.Parsed;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** Reads the rows of an advice. */
final class AdviceReader {
    /** What a line says of its claim. */
    private enum Status {
        PAID(AdviceStatus.PAID),
        LODGED(AdviceStatus.LODGED),
        FAILED(AdviceStatus.FAILED),
        REVERSED(AdviceStatus.PAID);

        private final AdviceStatus what;

        Status(AdviceStatus what) {
            this.what = what;
        }

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final Words words;
    private final Optional<LocalDate> paidOn;
    private final Optional<String> buyer;
    private final List<Finding> findings = new ArrayList<>();

    /**
     * A reader.
     *
     * @param words what buyers call things
     * @param paidOn the day of lines that name none
     * @param buyer the buyer of lines that name none
     */
    AdviceReader(Words words, Optional<LocalDate> paidOn, Optional<String> buyer) {
        this.words = words;
        this.paidOn = paidOn;
        this.buyer = buyer;
    }

    List<Finding> findings() {
        return findings;
    }

    /** What the rows say; one that cannot be used is left out with a finding. */
    List<RemittanceLine> read(Sheet sheet, Map<AdviceField, Column> columns) {
        List<RemittanceLine> all = new ArrayList<>();
        sheet.rows().forEach(row -> said(sheet, columns, row).ifPresent(all::add));
        return all;
    }

    private Optional<RemittanceLine> said(Sheet sheet, Map<AdviceField, Column> columns, Row row) {
        AdviceRow cells = new AdviceRow(sheet, columns, row, findings);
        Optional<Money> amount = cells.money(AdviceField.AMOUNT);
        Optional<Status> status =
                cells.says(AdviceField.STATUS)
                        ? cells.value(AdviceField.STATUS, FindingCode.CHOICE_UNKNOWN, this::status)
                        : Optional.of(Status.PAID);
        Optional<AdviceStatus> what = status.map(s -> s.what);
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
        boolean takenBack = status.equals(Optional.of(Status.REVERSED));
        Money paid = amount.orElse(Money.ZERO);
        return Optional.of(
                new RemittanceLine(
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
            Optional<AdviceStatus> what,
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
        if (what.equals(Optional.of(AdviceStatus.PAID)) && amount.map(Money::isZero).orElse(true)) {
            cells.refuse(
                    AdviceField.AMOUNT,
                    FindingCode.MONEY_UNREADABLE,
                    "The line says neither what was paid nor that the claim was lodged or failed.",
                    "Add the amount, or the status lodged or failed.");
        }
    }

    private Parsed<Status> status(String text) {
        return words.read("advice-status", text, Status.values(), Status::word);
    }

    private static Parsed<SchemeName> scheme(String text) {
        return Arrays.stream(SchemeName.values())
                .filter(s -> text.toUpperCase(Locale.ROOT).matches(s.word() + "S?"))
                .findFirst()
                .map(Parsed::ok)
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "The scheme is not known.",
                                        Arrays.stream(SchemeName.values())
                                                .map(SchemeName::word)
                                                .collect(
                                                        Collectors.joining(" or ", "Type ", "."))));
    }
}
