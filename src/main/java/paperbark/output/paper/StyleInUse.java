package paperbark.output.paper;

import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.output.BrokenTemplate;
import paperbark.output.TemplateEngine;

/**
 * The style sheet that packs are laid out with: the firm's own, and the shipped one where there is
 * none or it cannot be used. Safe for use by several threads.
 */
final class StyleInUse {
    private final StyleSheet shipped;
    private volatile StyleSheet sheet;
    private volatile Optional<Finding> finding = Optional.empty();

    /**
     * The sheet of the firm's folder.
     *
     * @param engine what reads the firm's folder
     * @param shipped what reads the shipped templates alone
     */
    StyleInUse(TemplateEngine engine, TemplateEngine shipped) {
        this.shipped = StyleSheet.shared(shipped.source(Packs.STYLE).orElseThrow());
        sheet = this.shipped;
        try {
            sheet = engine.text(Packs.STYLE).map(StyleSheet::shared).orElse(this.shipped);
        } catch (BrokenTemplate e) {
            refuse(e.getMessage());
        }
    }

    /** The sheet. */
    StyleSheet sheet() {
        return sheet;
    }

    /** Whether it is the shipped one. */
    boolean isShipped() {
        return sheet.equals(shipped);
    }

    /** Why the firm's own was refused; empty where it was not. */
    Optional<Finding> finding() {
        return finding;
    }

    /** Puts the shipped sheet in place of the firm's own, for a reason given as a sentence. */
    void refuse(String why) {
        sheet = shipped;
        finding =
                Optional.of(
                        Finding.of(
                                        FindingCode.TEMPLATE_BROKEN,
                                        new Place.InTemplate(Packs.STYLE, 0, 0),
                                        "The style sheet cannot be used, and the shipped one takes"
                                                + " its place. "
                                                + why,
                                        "Mend the style sheet, or take it away.")
                                .as(Severity.CHECK));
    }
}
