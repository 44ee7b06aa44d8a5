package paperbark.firm;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import paperbark.value.ExactMoney;
import paperbark.value.Parsed;
import paperbark.value.State;

/** Reads the columns of the offers table that say on which terms a price holds. */
final class OfferTermsRow {
    private OfferTermsRow() {}

    /** The terms; plain where a column is empty or absent. */
    static OfferTerms read(TableRow row) {
        OfferTerms plain = OfferTerms.PLAIN;
        Optional<GstBasis> basis =
                row.optional("gst_basis", CellText.oneOf(GstBasis.values(), GstBasis::word));
        Optional<ExactMoney> fee = row.optional("fee_per_certificate", CellText::price);
        Optional<Set<Integer>> zones =
                row.optional("zones", text -> each(text, OfferTermsRow::zone));
        Optional<Set<State>> states = row.optional("states", text -> each(text, State::parse));
        Optional<PaidTo> paidTo =
                row.optional("paid_to", CellText.oneOf(PaidTo.values(), PaidTo::word));
        return new OfferTerms(
                basis.orElse(plain.gstBasis()),
                fee.orElse(plain.feePerCertificate()),
                zones.orElse(plain.zones()),
                states.orElse(plain.states()),
                paidTo.orElse(plain.paidTo()),
                row.text("form"));
    }

    private static Parsed<Integer> zone(String text) {
        return text.matches("[1-9]")
                ? Parsed.ok(Integer.valueOf(text))
                : Parsed.bad("The text is not a list of zones.", "Type zone numbers, such as 3;4.");
    }

    /** Several values with semicolons, commas or spaces between them. */
    private static <T> Parsed<Set<T>> each(String text, Function<String, Parsed<T>> parse) {
        Set<T> all = new LinkedHashSet<>();
        for (String part : text.strip().split("[;,\\s]+")) {
            Parsed<T> parsed = parse.apply(part);
            if (parsed instanceof Parsed.Bad<T> bad) {
                return Parsed.bad(bad.fact(), bad.remedy());
            }
            parsed.toOptional().ifPresent(all::add);
        }
        return Parsed.ok(all);
    }
}
