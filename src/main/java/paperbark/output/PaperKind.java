package paperbark.output;

import java.util.Optional;
import paperbark.finding.Concern;
import paperbark.value.SchemeName;

/** The papers of a pack, in the order in which they lie in it. */
public enum PaperKind {
    COVER("cover", "Cover and checklist"),
    SITE_SHEET("site-sheet", "Site sheet"),
    WARRANTY("warranty", "Warranty registration", Concern.WARRANTY),
    STC("stc", "STC assignment", Concern.STC),
    VEEC("veec", "VEEC assignment", Concern.VEEC),
    BENEFIT("benefit", "Statement of benefit"),
    WORKING("working", "Entitlement working"),
    OLD_HEATER("old-heater", "Old-heater record", Concern.OLD_HEATER),
    HANDOVER("handover", "Owner's handover");

    private final String folder;
    private final String title;
    private final Optional<Concern> concern;

    PaperKind(String folder, String title) {
        this(folder, title, Optional.empty());
    }

    PaperKind(String folder, String title, Concern concern) {
        this(folder, title, Optional.of(concern));
    }

    PaperKind(String folder, String title, Optional<Concern> concern) {
        this.folder = folder;
        this.title = title;
        this.concern = concern;
    }

    /** The paper that assigns the certificates of a scheme. */
    public static PaperKind of(SchemeName scheme) {
        return switch (scheme) {
            case STC -> STC;
            case VEEC -> VEEC;
        };
    }

    /** The folder of its templates. */
    public String folder() {
        return folder;
    }

    /** The name on paper and in bookmarks. */
    public String title() {
        return title;
    }

    /** What a stop must hold to keep this paper back; empty for papers that always go out. */
    public Optional<Concern> concern() {
        return concern;
    }
}
