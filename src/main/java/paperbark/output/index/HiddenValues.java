package paperbark.output.index;

import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.job.Field;
import paperbark.output.BatchView;
import paperbark.sheet.Column;

/**
 * Which findings are about telephone numbers, e-mail addresses and bank details: their values stay
 * off the page, which is passed around more freely than the register. Good telephone numbers stand
 * in the page's list of whom to ring.
 */
final class HiddenValues {
    private static final String HIDDEN = "(not shown on this page)";
    private static final Set<Field> FIELDS =
            Set.of(
                    Field.OWNER_PHONE,
                    Field.OWNER_EMAIL,
                    Field.ACCOUNT_NAME,
                    Field.BSB,
                    Field.ACCOUNT);
    private static final Set<FindingCode> CODES =
            Set.of(
                    FindingCode.PHONE_WRONG,
                    FindingCode.EMAIL_WRONG,
                    FindingCode.BSB_WRONG,
                    FindingCode.ACCOUNT_WRONG);

    private final Set<String> headings;

    private HiddenValues(Set<String> headings) {
        this.headings = headings;
    }

    static HiddenValues in(BatchView view) {
        return new HiddenValues(
                view.cases().stream()
                        .map(file -> file.job().origin().columns())
                        .flatMap(columns -> FIELDS.stream().map(columns::get))
                        .filter(Objects::nonNull)
                        .map(Column::heading)
                        .collect(Collectors.toSet()));
    }

    String seen(Finding finding) {
        if (finding.seen().isEmpty()) {
            return "";
        }
        return isPrivate(finding) ? HIDDEN : finding.seen();
    }

    String remedy(Finding finding) {
        return cleaned(finding, finding.remedy());
    }

    /** A sentence about the finding without the private value. */
    String cleaned(Finding finding, String text) {
        if (!isPrivate(finding) || finding.seen().isEmpty()) {
            return text;
        }
        // Only where it stands alone: an example in a remedy may hold the same few digits.
        return text.replaceAll(
                "(?<![\\p{L}\\p{N}])" + Pattern.quote(finding.seen()) + "(?![\\p{L}\\p{N}])",
                Matcher.quoteReplacement(HIDDEN));
    }

    private boolean isPrivate(Finding finding) {
        Place place = finding.place();
        return CODES.contains(finding.code()) || headings.contains(place.columnHeading());
    }
}
