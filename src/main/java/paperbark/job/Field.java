package paperbark.job;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.sheet.ColumnField;

/**
 * Everything that a register can say of a job. The firm's headings are mapped to these by the
 * columns table; a field that no heading names is simply not known.
 */
public enum Field implements ColumnField {
    JOB("Job", true),
    STAGE("Stage"),
    CREW("Crew"),
    VISIT_ORDER("Visit order"),
    DATE("Date, planned or done"),
    VISIT_DATE("Visit date"),
    INSTALLED_DATE("Installed on"),
    SIGNED_DATE("Assignment signed on"),
    CORRECTS("Corrects"),

    OWNER_NAME("Owner", true),
    OWNER_CONTACT("Owner's contact"),
    OWNER_ABN("Owner's ABN"),
    OWNER_GST("Owner registered for GST"),
    OWNER_PHONE("Owner's phone"),
    OWNER_EMAIL("Owner's e-mail"),
    POSTAL_STREET("Postal street"),
    POSTAL_SUBURB("Postal suburb"),
    POSTAL_STATE("Postal state"),
    POSTAL_POSTCODE("Postal postcode"),

    SITE_STREET("Site street", true),
    SITE_SUBURB("Site suburb", true),
    SITE_STATE("Site state", true),
    SITE_POSTCODE("Site postcode", true),
    SITE_POSITION("Position on site"),
    SITE_BUSINESS("Business premises"),

    MAKER("Maker", true),
    MODEL("Model", true),
    TANK_SERIAL("Tank serial"),
    COLLECTOR_SERIALS("Collector serials"),
    HEAT_PUMP_SERIAL("Heat pump serial"),
    LITRES("Litres"),
    COLLECTORS("Tubes or panels"),
    NEW_SYSTEM("New"),
    COMPLETE_SYSTEM("Complete system"),
    DECLARATIONS_DATE("Large-system declarations on"),

    PLUMBER("Plumber"),
    ELECTRICIAN("Electrician"),
    SELLER("Seller"),
    PLUMBING_CERTIFICATE("Plumbing certificate"),
    PLUMBING_CERTIFICATE_DATE("Plumbing certificate date"),
    ELECTRICAL_CERTIFICATE("Electrical certificate"),
    ELECTRICAL_CERTIFICATE_DATE("Electrical certificate date"),

    OLD_KIND("Old heater"),
    OLD_MAKER("Old maker"),
    OLD_MODEL("Old model"),
    OLD_SERIAL("Old serial"),
    OLD_DISABLED("Old heater disabled how"),
    OLD_DISPOSAL("Old heater disposal"),
    OLD_REMOVED_DATE("Old heater removed on"),

    STC_CLAIM("Claim STCs"),
    STC_BUYER("STC buyer"),
    STC_ZONE("STC zone"),
    STC_COUNT("STC count"),
    STC_BENEFIT("STC benefit"),
    VEEC_CLAIM("Claim VEECs"),
    VEEC_BUYER("VEEC buyer"),
    VEEC_COUNT("VEEC count"),
    VEEC_BENEFIT("VEEC benefit"),

    FULL_PRICE("Full price"),
    CO_PAYMENT("Co-payment"),
    BENEFIT_FORM("Benefit form"),
    ACCOUNT_NAME("Account name"),
    BSB("BSB"),
    ACCOUNT("Account number"),

    OFFICE_NOTE("Office note");

    private final String label;
    private final boolean needed;

    Field(String label) {
        this(label, false);
    }

    Field(String label, boolean needed) {
        this.label = label;
        this.needed = needed;
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
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The papers that print the field, of those that a stop can hold. */
    Set<Concern> feeds() {
        String name = name();
        if (this == STAGE) {
            // Whether anything is claimed hangs on it.
            return EnumSet.of(Concern.STC, Concern.VEEC);
        }
        if (ordinal() < INSTALLED_DATE.ordinal() || this == CORRECTS || this == OFFICE_NOTE) {
            return EnumSet.noneOf(Concern.class);
        }
        if (name.startsWith("STC_")) {
            return EnumSet.of(Concern.STC);
        }
        if (name.startsWith("VEEC_") || this == CO_PAYMENT) {
            return EnumSet.of(Concern.VEEC);
        }
        if (name.startsWith("OLD_")) {
            return EnumSet.of(Concern.VEEC, Concern.OLD_HEATER);
        }
        if (this == SELLER) {
            return EnumSet.of(Concern.WARRANTY);
        }
        if (name.contains("CERTIFICATE")
                || ordinal() >= FULL_PRICE.ordinal()
                || this == SIGNED_DATE) {
            return EnumSet.of(Concern.STC, Concern.VEEC);
        }
        return EnumSet.of(Concern.STC, Concern.VEEC, Concern.WARRANTY);
    }

    /**
     * The finding holding only papers that print this field; a stop that holds none of them is but
     * a check.
     */
    Finding narrow(Finding finding) {
        Set<Concern> holds = feeds();
        if (!finding.holds().contains(Concern.JOB)) {
            holds.retainAll(finding.holds());
        }
        if (!finding.stops()) {
            return finding;
        }
        return holds.isEmpty()
                ? finding.as(Severity.CHECK)
                : finding.holding(holds.toArray(Concern[]::new));
    }
}
