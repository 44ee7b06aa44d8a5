package paperbark.settle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
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

    private static final int MOST_WORDS = 4;
    private static final Set<String> DENIALS = Set.of("not", "no", "never", "un", "non", "yet");

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

    /**
     * What no line can do without and no column is understood to hold; told once, since every line
     * would be left out for it.
     */
    static Optional<Finding> lacking(
            Sheet sheet, Map<AdviceField, Column> columns, Advice.Defaults defaults) {
        List<String> lacking = new ArrayList<>();
        if (!columns.containsKey(AdviceField.AMOUNT) && !columns.containsKey(AdviceField.STATUS)) {
            lacking.add("what was paid (amount) or what became of the claim (status)");
        }
        if (!columns.containsKey(AdviceField.PAID_DATE) && defaults.paidOn().isEmpty()) {
            lacking.add("the day of the payment (paid-date)");
        }
        String found =
                sheet.columns().stream()
                        .map(c -> "\"" + c.heading() + "\"")
                        .collect(Collectors.joining(", "));
        return lacking.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Finding.of(
                                        FindingCode.COLUMN_MISSING,
                                        sheet.place(sheet.headingRow()),
                                        "No heading is understood as "
                                                + String.join(" or as ", lacking)
                                                + ", so no line was taken in; found are "
                                                + found
                                                + ".",
                                        "Add a line to the advice-columns table: the field, a comma and the buyer's heading.")
                                .as(Severity.CHECK));
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
                        cells.text(AdviceField.REASON).or(() -> longer(cells)).orElse(""),
                        cells.text(AdviceField.BUYER).or(() -> buyer)));
    }

    /** What is said behind the status is the buyer's reason where there is no other. */
    private Optional<String> longer(AdviceRow cells) {
        return cells.text(AdviceField.STATUS).filter(text -> known(text).toOptional().isEmpty());
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

    /** The status, also where more is said behind it, as long as that says nothing else. */
    private Parsed<Status> status(String text) {
        Parsed<Status> whole = known(text);
        List<String> said = List.of(text.strip().split("[^\\p{L}]+"));
        Optional<Status> first = begin(said);
        // Why a claim failed is often told with a "no".
        boolean denied =
                !first.equals(Optional.of(Status.FAILED))
                        && said.stream()
                                .map(word -> word.toLowerCase(Locale.ROOT))
                                .anyMatch(DENIALS::contains);
        boolean contradicted =
                IntStream.range(1, said.size())
                        .mapToObj(i -> begin(said.subList(i, said.size())))
                        .anyMatch(s -> s.isPresent() && !s.equals(first));
        return whole.toOptional().isPresent() || first.isEmpty() || denied || contradicted
                ? whole
                : Parsed.ok(first.get());
    }

    /** The status that the first words are, the most of them that are one. */
    private Optional<Status> begin(List<String> said) {
        for (int words = Math.min(MOST_WORDS, said.size()); words > 0; words--) {
            Optional<Status> status = known(String.join(" ", said.subList(0, words))).toOptional();
            if (status.isPresent()) {
                return status;
            }
        }
        return Optional.empty();
    }

    private Parsed<Status> known(String text) {
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
