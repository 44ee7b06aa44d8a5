package paperbark.output;

import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** A template that cannot be used, with the place of the mistake. */
public final class BrokenTemplate extends Exception {
    private static final long serialVersionUID = 1L;

    private final String template;
    private final int line;
    private final int column;
    private final boolean lacksFact;

    /** A mistake in a template; line and column count from 1, 0 is unknown. */
    public BrokenTemplate(String template, int line, int column, String fact) {
        this(template, line, column, fact, false);
    }

    /** The same, or a template that merely asks for something that is not there. */
    BrokenTemplate(String template, int line, int column, String fact, boolean lacksFact) {
        super(fact);
        this.lacksFact = lacksFact;
        this.template = template;
        this.line = line;
        this.column = column;
    }

    /** Whether the template asks for something that is not there, and is sound otherwise. */
    boolean lacksFact() {
        return lacksFact;
    }

    /** The finding for the user. */
    public Finding finding() {
        return Finding.of(
                FindingCode.TEMPLATE_BROKEN,
                new Place.InTemplate(template, Math.max(0, line), Math.max(0, column)),
                getMessage(),
                "Mend the template, or take it away so that the shipped one is used.");
    }
}
