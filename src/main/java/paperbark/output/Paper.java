package paperbark.output;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.firm.Buyer;
import paperbark.offer.Standing;
import paperbark.value.SchemeName;

/**
 * One paper of a pack.
 *
 * @param kind which paper
 * @param variant name of the template variant, {@code default} where the tables name none
 * @param blockedBy the stops that hold it; where there are any, it is not in the pack and the cover
 *     says why
 * @param stands the same paper of an earlier batch, where that one counts still and none is printed
 * @param replaces the same paper of an earlier batch, where that one counts no longer
 * @param corrects what an assignment says of earlier claims, where there are any
 */
public record Paper(
        PaperKind kind,
        String variant,
        List<Finding> blockedBy,
        Optional<EarlierPaper> stands,
        Optional<EarlierPaper> replaces,
        Optional<Correction> corrects) {
    /** The folder of the buyers' and makers' own forms within the template folder. */
    public static final String FORMS = "forms";

    /** Keeps the findings from being changed. */
    public Paper {
        blockedBy = List.copyOf(blockedBy);
    }

    /** A paper of a job that was in no batch before. */
    public Paper(PaperKind kind, String variant, List<Finding> blockedBy) {
        this(kind, variant, blockedBy, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** The name on paper and in bookmarks. */
    public String title() {
        return kind.title();
    }

    /** Where it begins in the pack: links to {@code #leaf-} and this lead there. */
    public String anchor() {
        return kind.title().toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
    }

    /** Whether a stop holds it. */
    public boolean isBlocked() {
        return !blockedBy.isEmpty();
    }

    /** Whether it is held, and an earlier one says what is not so any more. */
    public boolean takesBack() {
        return isBlocked() && replaces.filter(earlier -> !earlier.changed().isEmpty()).isPresent();
    }

    /**
     * What stands on it beside the facts of the job, a line each: another form is another paper.
     */
    public String says(CaseFile file) {
        return "form: "
                + variant
                + "\n"
                + (kind.saysClaims() ? claims(file) : "")
                + (kind.saysOthersHeld() ? "held then: " + othersHeld(file) + "\n" : "");
    }

    private String othersHeld(CaseFile file) {
        String held =
                file.standings().entrySet().stream()
                        .filter(e -> !kind.scheme().equals(Optional.of(e.getKey())))
                        .filter(e -> e.getValue() == Standing.HELD)
                        .map(e -> e.getKey().word() + "s")
                        .collect(Collectors.joining(", "));
        return held.isEmpty() ? "none" : held;
    }

    private String claims(CaseFile file) {
        return file.entitlements().all().stream()
                .filter(e -> kind.scheme().isEmpty() || kind.scheme().get() == e.scheme())
                .map(
                        e ->
                                e.scheme().word()
                                        + "s: "
                                        + e.certificates().map(String::valueOf).orElse("")
                                        + "\n"
                                        + "buyer of "
                                        + e.scheme().word()
                                        + "s: "
                                        + buyer(file, e.scheme())
                                        + "\n")
                .collect(Collectors.joining());
    }

    private static String buyer(CaseFile file, SchemeName scheme) {
        return file.buyer(scheme).map(Buyer::name).orElse("");
    }

    /**
     * Whether it is in the pack: it counts for nothing that an earlier one stands if it is held.
     */
    public boolean isPrinted() {
        return isBlocked() || stands.isEmpty();
    }

    /**
     * How far a paper has come that people sign, in words: printed, or whether the earlier one that
     * stands is back. Empty text for a paper that nobody signs or that is held.
     */
    public String signing() {
        if (!kind.isSigned() || kind.isCopy() || isBlocked()) {
            return "";
        }
        return stands.map(EarlierPaper::came).orElse("printed");
    }

    /** The same paper beside what went out before. */
    public Paper after(
            Optional<EarlierPaper> standing,
            Optional<EarlierPaper> replaced,
            Optional<Correction> correction) {
        return new Paper(kind, variant, blockedBy, standing, replaced, correction);
    }

    /** The same paper, held by these stops; the same as it is where there are none. */
    public Paper heldBy(List<Finding> stops) {
        return stops.isEmpty() ? this : new Paper(kind, variant, stops, stands, replaces, corrects);
    }
}
