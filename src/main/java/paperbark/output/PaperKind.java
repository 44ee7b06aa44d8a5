package paperbark.output;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.entitlement.Schemes;
import paperbark.finding.Concern;
import paperbark.job.JobFact;
import paperbark.value.SchemeName;

/**
 * The papers of a pack, in the order in which they lie in it; each scheme has its assignment, of
 * which an owner's copy may lie behind it.
 */
public final class PaperKind implements Comparable<PaperKind> {
    private static final List<PaperKind> ALL = new ArrayList<>();

    public static final PaperKind COVER = new PaperKind("cover", "Cover and checklist");
    public static final PaperKind WORKING = new PaperKind("working", "Entitlement working");
    public static final PaperKind OLD_HEATER =
            new PaperKind("old-heater", "Old-heater record", Concern.OLD_HEATER);
    public static final PaperKind SITE_SHEET = new PaperKind("site-sheet", "Site sheet");
    public static final PaperKind WARRANTY =
            new PaperKind("warranty", "Warranty registration", Concern.WARRANTY);
    private static final Map<SchemeName, PaperKind> ASSIGNMENTS = assignments();
    private static final Map<SchemeName, PaperKind> COPIES = copies();
    public static final PaperKind DECLARATIONS =
            new PaperKind("declarations", "Large-heater declarations");
    public static final PaperKind HANDOVER = new PaperKind("handover", "Owner's handover");
    public static final PaperKind BENEFIT = new PaperKind("benefit", "Statement of benefit");

    // The office files the first, the owner keeps the second; all else goes its own way.
    private static final List<Set<PaperKind>> KEPT_TOGETHER =
            List.of(Set.of(COVER, WORKING, OLD_HEATER), Set.of(HANDOVER, BENEFIT));

    private final String folder;
    private final String title;
    private final Optional<Concern> concern;
    private final Optional<SchemeName> scheme;
    private final int order;

    private PaperKind(String folder, String title) {
        this(folder, title, Optional.empty(), Optional.empty());
    }

    private PaperKind(String folder, String title, Concern concern) {
        this(folder, title, Optional.of(concern), Optional.empty());
    }

    private PaperKind(
            String folder, String title, Optional<Concern> concern, Optional<SchemeName> scheme) {
        this.folder = folder;
        this.title = title;
        this.concern = concern;
        this.scheme = scheme;
        this.order = 2 * ALL.size();
        ALL.add(this);
    }

    private PaperKind(PaperKind copied) {
        this.folder = copied.folder;
        this.title = copied.title + ", owner's copy";
        this.concern = copied.concern;
        this.scheme = copied.scheme;
        this.order = copied.order + 1;
    }

    private static Map<SchemeName, PaperKind> assignments() {
        Map<SchemeName, PaperKind> all = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            all.put(
                    scheme,
                    new PaperKind(
                            scheme.key(),
                            scheme.word() + " assignment",
                            Optional.of(Concern.claim(scheme)),
                            Optional.of(scheme)));
        }
        return all;
    }

    private static Map<SchemeName, PaperKind> copies() {
        Map<SchemeName, PaperKind> all = new EnumMap<>(SchemeName.class);
        ASSIGNMENTS.forEach((scheme, kind) -> all.put(scheme, new PaperKind(kind)));
        return all;
    }

    /** The paper whose templates lie in that folder, as the ledger calls it. */
    public static Optional<PaperKind> ofFolder(String folder) {
        return ALL.stream().filter(kind -> kind.folder.equals(folder)).findFirst();
    }

    /** All of them but the owner's copies, in their order. */
    public static List<PaperKind> values() {
        return List.copyOf(ALL);
    }

    /** The paper that assigns the certificates of a scheme. */
    public static PaperKind of(SchemeName scheme) {
        return ASSIGNMENTS.get(scheme);
    }

    /** The owner's copy of that paper. */
    public static PaperKind copyOf(SchemeName scheme) {
        return COPIES.get(scheme);
    }

    /** Whether it is but an owner's copy. */
    public boolean isCopy() {
        return COPIES.containsValue(this);
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

    /** The scheme whose certificates it assigns; empty for other papers. */
    public Optional<SchemeName> scheme() {
        return scheme;
    }

    /** Whether it may begin on the back of that paper: the same people keep both, in one place. */
    public boolean mayShareASheetWith(PaperKind before) {
        return KEPT_TOGETHER.stream().anyMatch(k -> k.contains(this) && k.contains(before));
    }

    /** The facts of a job that it prints; when none of them changed it says what it said. */
    public Set<JobFact> facts() {
        return PaperFacts.of(this);
    }

    /** Whether each batch has its own: it tells of that batch, or of the rules of its day. */
    public boolean isMadeAnew() {
        return this == COVER || this == WORKING;
    }

    /** Whether people outside the office get it, who have to give it back once it is wrong. */
    public boolean isGivenOut() {
        return !isMadeAnew() && this != SITE_SHEET;
    }

    /** Whether people sign it, on site, with what was not known before written in by hand. */
    public boolean isSigned() {
        return concern.isPresent() || this == DECLARATIONS;
    }

    /** Whether it says how many certificates go to whom. */
    boolean saysClaims() {
        return scheme.isPresent() || this == BENEFIT || this == HANDOVER;
    }

    /** Whether it says of the other schemes whether their claims are held. */
    boolean saysOthersHeld() {
        return this == BENEFIT
                || this == HANDOVER
                || scheme.filter(s -> Schemes.KNOWN.of(s).tellsOfOthers()).isPresent();
    }

    @Override
    public int compareTo(PaperKind other) {
        return Integer.compare(order, other.order);
    }

    @Override
    public String toString() {
        return title;
    }
}
