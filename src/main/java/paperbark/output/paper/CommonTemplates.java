package paperbark.output.paper;

import java.util.ArrayList;
import java.util.List;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;

/** The templates that nearly every batch needs, whatever its register holds. */
public final class CommonTemplates {
    private static final List<String> PARTS =
            List.of(
                    PaperWriter.RUNNING,
                    "parts.ftlh",
                    "stc-words.ftlh",
                    "safety.ftlh",
                    "acl-wording.ftlh",
                    "privacy.ftlh");

    private CommonTemplates() {}

    /** Reads them before they are needed, while nobody else uses the engine. */
    public static void readAhead(TemplateEngine engine) {
        engine.readAhead(names());
    }

    static List<String> names() {
        List<String> names = new ArrayList<>(PARTS);
        PaperKind.values().forEach(kind -> names.add(PaperWriter.usual(kind)));
        return names;
    }
}
