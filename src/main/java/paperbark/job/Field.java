package paperbark.job;

import static paperbark.finding.Concern.CLAIMS;
import static paperbark.finding.Concern.CLAIMS_AND_WARRANTY;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.sheet.ColumnField;
import paperbark.value.SchemeName;

/**
 * Everything that a register can say of a job. The firm's headings are mapped to these by the
 * columns table; a field that no heading names is simply not known.
 *
 * <p>Each names the papers that print it, of those that a stop can hold. What a register says of a
 * claim is the same for every scheme: see {@link #of}.
 */
public final class Field implements ColumnField, Comparable<Field> {
    private static final List<Field> ALL = new ArrayList<>();
    private static final Set<Concern> NO_PAPER = Set.of();
    private static final Set<Concern> WARRANTY = Set.of(Concern.WARRANTY);
    private static final Set<Concern> VEEC = Set.of(Concern.claim(SchemeName.VEEC));
    private static final Set<Concern> OLD_HEATER =
            Set.of(Concern.claim(SchemeName.VEEC), Concern.OLD_HEATER);

    public static final Field JOB = needed("job", "Job", NO_PAPER);
    public static final Field STAGE = known("stage", "Stage", CLAIMS);
    public static final Field CREW = known("crew", "Crew", NO_PAPER);
    public static final Field VISIT_ORDER = known("visit-order", "Visit order", NO_PAPER);
    public static final Field DATE = known("date", "Date, planned or done", NO_PAPER);
    public static final Field VISIT_DATE = known("visit-date", "Visit date", NO_PAPER);
    public static final Field INSTALLED_DATE =
            known("installed-date", "Installed on", CLAIMS_AND_WARRANTY);
    public static final Field SIGNED_DATE = known("signed-date", "Assignment signed on", CLAIMS);
    public static final Field CORRECTS = known("corrects", "Corrects", NO_PAPER);

    public static final Field OWNER_NAME = needed("owner-name", "Owner", CLAIMS_AND_WARRANTY);
    public static final Field SECOND_OWNER =
            known("second-owner", "Second owner", CLAIMS_AND_WARRANTY);
    public static final Field OWNER_CONTACT =
            known("owner-contact", "Owner's contact", CLAIMS_AND_WARRANTY);
    public static final Field OWNER_ABN = known("owner-abn", "Owner's ABN", CLAIMS_AND_WARRANTY);
    public static final Field OWNER_GST =
            known("owner-gst", "Owner registered for GST", CLAIMS_AND_WARRANTY);
    public static final Field OWNER_PHONE =
            known("owner-phone", "Owner's phone", CLAIMS_AND_WARRANTY);
    public static final Field OWNER_EMAIL =
            known("owner-email", "Owner's e-mail", CLAIMS_AND_WARRANTY);
    public static final Field POSTAL_STREET =
            known("postal-street", "Postal street", CLAIMS_AND_WARRANTY);
    public static final Field POSTAL_SUBURB =
            known("postal-suburb", "Postal suburb", CLAIMS_AND_WARRANTY);
    public static final Field POSTAL_STATE =
            known("postal-state", "Postal state", CLAIMS_AND_WARRANTY);
    public static final Field POSTAL_POSTCODE =
            known("postal-postcode", "Postal postcode", CLAIMS_AND_WARRANTY);

    public static final Field OWNER_ONE_CELL =
            together(
                    "owner-one-cell",
                    "Owners and contact in one cell",
                    OWNER_NAME,
                    SECOND_OWNER,
                    OWNER_CONTACT);
    public static final Field POSTAL_ONE_CELL =
            together(
                    "postal-one-cell",
                    "Postal address in one cell",
                    POSTAL_STREET,
                    POSTAL_SUBURB,
                    POSTAL_STATE,
                    POSTAL_POSTCODE);

    public static final Field SITE_STREET =
            needed("site-street", "Site street", CLAIMS_AND_WARRANTY);
    public static final Field SITE_SUBURB =
            needed("site-suburb", "Site suburb", CLAIMS_AND_WARRANTY);
    public static final Field SITE_STATE = needed("site-state", "Site state", CLAIMS_AND_WARRANTY);
    public static final Field SITE_POSTCODE =
            needed("site-postcode", "Site postcode", CLAIMS_AND_WARRANTY);
    public static final Field SITE_POSITION =
            known("site-position", "Position on site", CLAIMS_AND_WARRANTY);
    public static final Field SITE_BUSINESS =
            known("site-business", "Business premises", CLAIMS_AND_WARRANTY);

    public static final Field SITE_ONE_CELL =
            together(
                    "site-one-cell",
                    "Site address in one cell",
                    SITE_STREET,
                    SITE_SUBURB,
                    SITE_STATE,
                    SITE_POSTCODE);

    public static final Field MAKER = needed("maker", "Maker", CLAIMS_AND_WARRANTY);
    public static final Field MODEL = needed("model", "Model", CLAIMS_AND_WARRANTY);
    public static final Field PRODUCT_ONE_CELL =
            together("product-one-cell", "Maker and model in one cell", MAKER, MODEL);
    public static final Field TANK_SERIAL =
            known("tank-serial", "Tank serial", CLAIMS_AND_WARRANTY);
    public static final Field COLLECTOR_SERIALS =
            known("collector-serials", "Collector serials", CLAIMS_AND_WARRANTY);
    public static final Field HEAT_PUMP_SERIAL =
            known("heat-pump-serial", "Heat pump serial", CLAIMS_AND_WARRANTY);
    public static final Field SERIALS_ONE_CELL =
            together(
                    "serials-one-cell",
                    "Serials in one cell",
                    TANK_SERIAL,
                    COLLECTOR_SERIALS,
                    HEAT_PUMP_SERIAL);
    public static final Field LITRES = known("litres", "Litres", CLAIMS_AND_WARRANTY);
    public static final Field COLLECTORS =
            known("collectors", "Tubes or panels", CLAIMS_AND_WARRANTY);
    public static final Field NEW_SYSTEM = known("new-system", "New", CLAIMS_AND_WARRANTY);
    public static final Field COMPLETE_SYSTEM =
            known("complete-system", "Complete system", CLAIMS_AND_WARRANTY);
    public static final Field DECLARATIONS_DATE =
            known("declarations-date", "Large-system declarations on", CLAIMS_AND_WARRANTY);

    public static final Field PLUMBER = known("plumber", "Plumber", CLAIMS_AND_WARRANTY);
    public static final Field ELECTRICIAN =
            known("electrician", "Electrician", CLAIMS_AND_WARRANTY);
    public static final Field SELLER = known("seller", "Seller", WARRANTY);
    public static final Field PLUMBING_CERTIFICATE =
            known("plumbing-certificate", "Plumbing certificate", CLAIMS);
    public static final Field PLUMBING_CERTIFICATE_DATE =
            known("plumbing-certificate-date", "Plumbing certificate date", CLAIMS);
    public static final Field ELECTRICAL_CERTIFICATE =
            known("electrical-certificate", "Electrical certificate", CLAIMS);
    public static final Field ELECTRICAL_CERTIFICATE_DATE =
            known("electrical-certificate-date", "Electrical certificate date", CLAIMS);

    public static final Field OLD_KIND = known("old-kind", "Old heater", OLD_HEATER);
    public static final Field OLD_MAKER = known("old-maker", "Old maker", OLD_HEATER);
    public static final Field OLD_MODEL = known("old-model", "Old model", OLD_HEATER);
    public static final Field OLD_SERIAL = known("old-serial", "Old serial", OLD_HEATER);
    public static final Field OLD_DISABLED =
            known("old-disabled", "Old heater disabled how", OLD_HEATER);
    public static final Field OLD_DISPOSAL =
            known("old-disposal", "Old heater disposal", OLD_HEATER);
    public static final Field OLD_REMOVED_DATE =
            known("old-removed-date", "Old heater removed on", OLD_HEATER);

    public static final Field SCHEME = known("scheme", "Certificates of this row", CLAIMS);
    public static final Field CERTIFICATE_BUYER =
            known("certificate-buyer", "Buyer of these certificates", CLAIMS);
    public static final Field CERTIFICATE_COUNT =
            known("certificate-count", "Number of these certificates", CLAIMS);
    public static final Field CERTIFICATE_BENEFIT =
            known("certificate-benefit", "Benefit for these certificates", CLAIMS);

    private static final Map<SchemeName, Map<ClaimFact, Field>> CLAIM_FACTS = claimFacts();

    public static final Field FULL_PRICE = known("full-price", "Full price", CLAIMS);
    public static final Field CO_PAYMENT = known("co-payment", "Co-payment", VEEC);
    public static final Field BENEFIT_FORM = known("benefit-form", "Benefit form", CLAIMS);
    public static final Field ACCOUNT_NAME = known("account-name", "Account name", CLAIMS);
    public static final Field BSB = known("bsb", "BSB", CLAIMS);
    public static final Field ACCOUNT = known("account", "Account number", CLAIMS);

    public static final Field OFFICE_NOTE = known("office-note", "Office note", NO_PAPER);

    private final String key;
    private final String label;
    private final boolean needed;
    private final Set<Concern> feeds;
    private final List<Field> parts;
    private final int order;

    private Field(String key, String label, boolean needed, Set<Concern> feeds, List<Field> parts) {
        this.key = key;
        this.label = label;
        this.needed = needed;
        this.feeds = feeds;
        this.parts = parts;
        this.order = ALL.size();
        ALL.add(this);
    }

    private static Field known(String key, String label, Set<Concern> feeds) {
        return new Field(key, label, false, feeds, List.of());
    }

    private static Field needed(String key, String label, Set<Concern> feeds) {
        return new Field(key, label, true, feeds, List.of());
    }

    private static Field together(String key, String label, Field... parts) {
        return new Field(key, label, false, CLAIMS_AND_WARRANTY, List.of(parts));
    }

    private static Map<SchemeName, Map<ClaimFact, Field>> claimFacts() {
        Map<SchemeName, Map<ClaimFact, Field>> all = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            Map<ClaimFact, Field> ofScheme = new EnumMap<>(ClaimFact.class);
            for (ClaimFact fact : ClaimFact.values()) {
                // Only STCs have a zone that firms write down.
                if (fact != ClaimFact.ZONE || scheme == SchemeName.STC) {
                    Set<Concern> feeds = Set.of(Concern.claim(scheme));
                    ofScheme.put(fact, known(fact.key(scheme), fact.label(scheme), feeds));
                }
            }
            all.put(scheme, ofScheme);
        }
        return all;
    }

    /** All of them, in the order in which people are shown them. */
    public static List<Field> values() {
        return List.copyOf(ALL);
    }

    /** What a register says of the claim under a scheme; empty where it says no such thing. */
    public static Optional<Field> find(SchemeName scheme, ClaimFact fact) {
        return Optional.ofNullable(CLAIM_FACTS.get(scheme).get(fact));
    }

    /** What every register can say of the claim under a scheme. */
    public static Field of(SchemeName scheme, ClaimFact fact) {
        return find(scheme, fact).orElseThrow();
    }

    /** The words for people, used where the firm's own heading is not at hand. */
    @Override
    public String label() {
        return label;
    }

    /** Whether a register without such a column is refused. */
    @Override
    public boolean isNeeded() {
        return needed;
    }

    /** The name in the columns table, e.g. {@code tank-serial}. */
    @Override
    public String key() {
        return key;
    }

    /** The fields that one cell of such a column holds together; empty for a plain field. */
    @Override
    public List<Field> parts() {
        return parts;
    }

    /** The papers that print the field, of those that a stop can hold. */
    Set<Concern> feeds() {
        return feeds;
    }

    /**
     * The finding holding only papers that print this field; a stop that holds none of them is but
     * a check.
     */
    Finding narrow(Finding finding) {
        if (!finding.stops()) {
            return finding;
        }
        Set<Concern> holds = new HashSet<>(feeds);
        if (!finding.holds().contains(Concern.JOB)) {
            holds.retainAll(finding.holds());
        }
        return holds.isEmpty() ? finding.as(Severity.CHECK) : finding.holding(holds);
    }

    @Override
    public int compareTo(Field other) {
        return Integer.compare(order, other.order);
    }

    /** The name for templates, e.g. {@code TANK_SERIAL}. */
    @Override
    public String toString() {
        return key.toUpperCase(Locale.ROOT).replace('-', '_');
    }
}
