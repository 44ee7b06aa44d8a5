package paperbark.output;

import java.util.Optional;
import paperbark.finding.Concern;

/** The papers of a pack, in the order in which they lie in it. */
public enum PaperKind {
    COVER("cover", "Cover and checklist", null),
    SITE_SHEET("site-sheet", "Site sheet", null),
    WARRANTY("warranty", "Warranty registration", Concern.WARRANTY),
    STC("stc", "STC assignment", Concern.STC),
    VEEC("veec", "VEEC assignment", Concern.VEEC),
    WORKING("working", "Entitlement working", null),
    OLD_HEATER("old-heater", "Old-heater record", Concern.OLD_HEATER),
    HANDOVER("handover", "Owner's handover", null);

    private final String folder;
    private final String title;
    private final Concern concern;

    PaperKind(String folder, String title, Concern concern) {
        this.folder = folder;
        this.title = title;
        this.concern = concern;
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
        return Optional.ofNullable(concern);
    }
}
