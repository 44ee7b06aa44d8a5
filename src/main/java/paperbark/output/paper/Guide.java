package paperbark.output.paper;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import paperbark.output.BatchInfo;
import paperbark.value.Days;

/** The page that hangs on the office wall: what goes into an office folder and what comes out. */
public final class Guide {
    private static final String TITLE = "How this folder works";

    // It has no head and foot of its own, and must stay on one page.
    private static final String MARGINS =
            "\n@page { margin: 13mm 14mm 10mm 18mm; @top-left { content: none; }"
                    + " @bottom-left { content: none; } }";

    private Guide() {}

    /**
     * The guide as a PDF.
     *
     * @param folder the firm's templates, whose style it follows; a guide template there that is
     *     broken gives way to the shipped one
     * @param today the day printed on it
     * @param version of the program
     */
    public static byte[] of(Optional<Path> folder, LocalDate today, String version) {
        return OwnPage.of(
                folder,
                "guide.ftlh",
                Map.of("today", Days.show(today), "program", version),
                MARGINS,
                new Imprint(
                        TITLE,
                        "Paperbark",
                        new BatchInfo("guide", "", today, version),
                        Conformance.BOTH));
    }
}
