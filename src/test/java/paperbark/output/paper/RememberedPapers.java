package paperbark.output.paper;

import java.util.Optional;
import paperbark.output.TemplateEngine;

/** What this process remembers of papers with the shipped style, for tests of other rooms. */
public final class RememberedPapers {
    private RememberedPapers() {}

    /** The memory, which is another one once it was let go. */
    public static Object now() {
        String style = new TemplateEngine(Optional.empty()).source(Packs.STYLE).orElseThrow();
        return StyleSheet.shared(style).drawn().orElseThrow();
    }
}
