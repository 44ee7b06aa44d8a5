package paperbark.finding;

import static paperbark.finding.Concern.CLAIMS;
import static paperbark.finding.Concern.CLAIMS_AND_WARRANTY;
import static paperbark.finding.Concern.JOB;
import static paperbark.finding.Concern.REGISTER;
import static paperbark.finding.Concern.claim;
import static paperbark.finding.Severity.CHECK;
import static paperbark.finding.Severity.NOTE;
import static paperbark.finding.Severity.STOP;
import static paperbark.value.SchemeName.STC;
import static paperbark.value.SchemeName.VEEC;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The catalogue of findings: a name that states the bad thing, the usual severity, what a stop
 * holds, and why it matters. Names are never changed once released.
 */
public enum FindingCode {
    // The file and its sheets
    FILE_UNREADABLE(STOP, "A file that cannot be read whole might be missing jobs.", REGISTER),
    FILE_MISLABELLED(
            STOP,
            "A file whose content differs from its name was usually saved or exported wrongly.",
            REGISTER),
    FILE_ENCRYPTED(STOP, "A locked workbook cannot be read without its password.", REGISTER),
    FILE_HAS_MACROS(
            NOTE, "Macros are never run here, so a value that one would still change is not seen."),
    FILE_TOO_LARGE(STOP, "Files far beyond a week of jobs are nearly always a mistake.", REGISTER),
    FILE_MAY_BE_CUT(
            STOP,
            "A half-copied list looks like a shorter one, and the missing jobs would go unclaimed.",
            REGISTER),
    SHEET_NOT_FOUND(
            STOP,
            "Reading another sheet than the one meant would prepare the wrong jobs.",
            REGISTER),
    SHEET_HIDDEN(NOTE, "Hidden sheets are left out, in case somebody expects their rows."),
    SHEET_FULL(
            STOP, "A sheet filled to its last row has probably lost the rows after it.", REGISTER),
    HEADINGS_NOT_FOUND(STOP, "Without headings nobody can tell which column is which.", REGISTER),
    HEADING_TWICE(STOP, "Two columns with one meaning may disagree.", REGISTER),
    COLUMN_MISSING(STOP, "A column that every job needs is not there.", REGISTER),
    COLUMN_UNNAMED(
            STOP,
            "Nobody can tell what stands under an empty heading, and it may rule out the claim.",
            CLAIMS),
    COLUMN_UNKNOWN(NOTE, "A column that is not understood is kept but not used."),
    REGISTER_EMPTY(
            STOP, "An empty list is more often a wrong file than a week without jobs.", REGISTER),
    ROWS_HIDDEN(NOTE, "A filter hides rows from the eye, and their jobs still need papers."),
    COLUMNS_HIDDEN(
            NOTE, "What a hidden column says goes onto papers, and nobody sees it in the list."),
    ROW_IGNORED(NOTE, "Rows that hold no job, such as totals, are left out."),
    ROW_NO_JOB(
            CHECK, "A remark is no job, and a job that looks like a remark would get no papers."),
    ROW_TWICE(
            STOP,
            "Of two rows with one number only one is read, and the job in the other is missing.",
            JOB),
    ROW_SHORT(STOP, "A row that ends early has lost its last cells or was shifted.", JOB),
    ROW_LONG(STOP, "A row with more cells than headings was probably shifted.", JOB),
    DATES_FROM_1904(NOTE, "Counted from 1900 instead, every date would be four years too early."),
    ENCODING_GUESSED(CHECK, "Names with accents may have been misread."),
    ENCODING_UNREADABLE(STOP, "Text in an unknown encoding would be printed wrongly.", REGISTER),
    DELIMITER_UNCLEAR(STOP, "With the wrong delimiter the columns fall apart.", REGISTER),
    CSV_BROKEN(STOP, "After a broken quote nobody can tell where the next row begins.", REGISTER),

    // Cells
    CELL_UNREADABLE(
            STOP, "A cell that cannot be read might hold the fact that a paper needs.", JOB),
    CELL_TOO_LONG(STOP, "Text of this length does not fit into a form.", JOB),
    DIGITS_LOST(
            STOP,
            "A spreadsheet keeps 15 digits of a number; the rest is gone.",
            CLAIMS_AND_WARRANTY),
    LEADING_ZERO_LOST(CHECK, "A spreadsheet drops the zero at the start of a number."),
    CELL_SPLIT(NOTE, "What one cell was read as is worth a look before papers are signed."),
    CELL_SPLIT_DOUBTFUL(CHECK, "Facts that share a cell can be taken apart in the wrong place."),
    CELL_NOT_SPLIT(
            STOP,
            "A cell that holds several facts must not be taken apart by a guess.",
            CLAIMS_AND_WARRANTY),
    FORMULA_ERROR(STOP, "An error stands where a paper needs a value.", CLAIMS_AND_WARRANTY),
    FORMULA_NOT_CALCULATED(
            STOP, "A formula that was never calculated has no value yet.", CLAIMS_AND_WARRANTY),
    FORMULA_EXTERNAL(CHECK, "A value taken from another workbook may be out of date."),
    CELL_MERGED(CHECK, "Only the first cell of a merged block holds the value."),
    TEXT_GARBLED(CHECK, "A name that was misread on its way is printed wrongly on every paper."),
    TEXT_CLEANED(NOTE, "A number or name with an unseen character never matches another."),
    SCRIPTS_MIXED(CHECK, "A letter of another alphabet looks right but never matches."),
    NUMBER_FOR_DATE(CHECK, "A plain number in a date column may be a date that lost its format."),
    DATE_UNREADABLE(STOP, "Closing dates and certificate counts hang on the date.", CLAIMS),
    DATE_OUT_OF_RANGE(STOP, "A date far from today is a typing slip or a wrong day count.", CLAIMS),
    NUMBER_UNREADABLE(CHECK, "A number that cannot be read is neither printed nor compared."),
    MONEY_UNREADABLE(STOP, "An amount must never be guessed.", CLAIMS),
    CHOICE_UNKNOWN(STOP, "The answer decides what the papers say and must not be guessed.", CLAIMS),
    TEXT_NOT_PRINTABLE(CHECK, "A box in place of a letter makes a name or address unreadable."),

    // Numbers and names
    ABN_WRONG(STOP, "Buyers and the tax office refuse a wrong business number.", CLAIMS),
    ACN_WRONG(CHECK, "A company's papers must show its right number or none."),
    PHONE_WRONG(CHECK, "Buyers and makers ring the owner to verify a claim."),
    EMAIL_WRONG(CHECK, "Copies of the papers go to this address."),
    POSTCODE_WRONG(
            STOP, "The postcode decides the zone and with it the number of certificates.", CLAIMS),
    POSTCODE_OF_OTHER_STATE(
            STOP,
            "Postcode and state disagree; either may be the slip, and the postcode decides zone and number.",
            CLAIMS),
    POSTCODE_NO_STREET(CHECK, "A heater cannot stand in a post office box."),
    BSB_WRONG(STOP, "Money sent to a wrong branch number is hard to get back.", CLAIMS),
    ACCOUNT_WRONG(STOP, "Money sent to a wrong account is hard to get back.", CLAIMS),
    SERIAL_WRONG(
            STOP,
            "A serial number that cannot be right fails the claim and the warranty.",
            CLAIMS_AND_WARRANTY),
    SERIAL_UNLIKE_PRODUCT(
            CHECK, "The number of another part, or a slip, fails the claim and the warranty."),
    SERIAL_TWICE(STOP, "A serial can be claimed once.", CLAIMS_AND_WARRANTY),

    // The job
    JOB_TWICE(STOP, "Two rows with one job number cannot both be right.", JOB),
    ROW_A_CERTIFICATE(CHECK, "Two rows of one job are held as if one of them were wrong."),
    ROWS_DISAGREE(STOP, "Of two rows of one job that differ, one is wrong.", CLAIMS_AND_WARRANTY),
    JOB_UNNAMED(STOP, "Without a job number nothing can be filed or found again.", JOB),
    FACT_MISSING(
            CHECK,
            "The paper goes out with a box to write in, and comes back incomplete if nobody does."),
    ADDRESS_INCOMPLETE(STOP, "An officer must be able to find the heater.", CLAIMS),
    ADDRESS_TWICE(CHECK, "Two heaters at one address must be told apart."),
    NAMES_UNKNOWN(
            CHECK, "A first list has names that no table knows yet, and each holds its jobs."),
    PERSON_UNKNOWN(STOP, "Licence numbers come from the people table.", CLAIMS),
    LICENCE_MISSING(STOP, "A claim without the installer's licence number fails.", CLAIMS),
    LICENCE_EXPIRED(STOP, "Work done without a licence in force cannot be claimed.", CLAIMS),
    MAKER_UNKNOWN(STOP, "Names must match the firm's tables to the letter.", CLAIMS_AND_WARRANTY),
    MODEL_UNKNOWN(STOP, "Only a listed model earns certificates.", CLAIMS_AND_WARRANTY),
    MODEL_NOT_LISTED_THEN(STOP, "The model must be listed on the day of installation.", claim(STC)),
    LITRES_DIFFER(
            CHECK,
            "The register and the products table name different sizes; one of them is wrong."),
    COLLECTORS_DIFFER(
            CHECK,
            "The register and the products table name different collectors; one of them is wrong."),
    SELLER_UNKNOWN(CHECK, "The warranty registration names the seller."),
    BUYER_UNKNOWN(STOP, "Form, price and address come from the buyers table.", CLAIMS),
    DATE_IN_FUTURE(
            STOP,
            "An installation that has not happened is no sale, and cannot be claimed or registered.",
            CLAIMS_AND_WARRANTY),
    INSTALLED_BUT_BOOKED(CHECK, "Stage and dates tell different stories."),
    SIGNED_BEFORE_INSTALLED(
            STOP, "Certificates assigned before installation are improperly created.", CLAIMS),
    DATES_OUT_OF_ORDER(CHECK, "The dates of the job contradict each other."),
    BENEFIT_MISSING(STOP, "A valid assignment states what the owner gets for it.", CLAIMS),
    BENEFIT_ZERO(
            CHECK,
            "An assignment states what the owner gets for it, and few give certificates away."),
    GST_STATUS_MISSING(CHECK, "The owner's GST registration decides how the assignment is taxed."),
    GST_OWNER_REGISTERED(
            CHECK,
            "An owner registered for GST who uses the heater in business owes GST on the assignment."),
    BANK_DETAILS_MISSING(CHECK, "Without account details nobody can be paid."),
    CERTIFICATE_NUMBER_MISSING(STOP, "A claim needs the compliance certificate.", CLAIMS),
    CERTIFICATE_LATE(CHECK, "Compliance certificates have legal time limits."),
    CERTIFICATE_TWICE(CHECK, "A compliance certificate belongs to one job."),
    CORRECTION(NOTE, "A corrected job replaces papers that may already have gone out."),

    // Entitlements
    RULE_MISSING(STOP, "Without a rule in force the number would be a guess.", CLAIMS),
    RULE_OLD(NOTE, "The rule table has not been confirmed for a long time."),
    ZONE_MISSING(STOP, "Without a zone there is no number of certificates.", CLAIMS),
    ZONE_DIFFERS(STOP, "A wrong zone means a wrong number of certificates.", claim(STC)),
    NOT_LISTED_FOR_ZONE(
            STOP, "The model earns nothing in a zone that it is not listed for.", claim(STC)),
    HEAT_PUMP_TOO_LARGE(STOP, "Heat pumps above the limit earn no STCs.", claim(STC)),
    SOLAR_DECLARATION_MISSING(
            STOP, "Large solar heaters earn nothing without the declarations.", claim(STC)),
    SECOND_HAND(STOP, "Only new systems earn certificates, once.", CLAIMS),
    SYSTEM_INCOMPLETE(STOP, "A tank or collector alone is not a system.", claim(STC)),
    BEFORE_SCHEME(STOP, "The scheme had not begun on that day.", CLAIMS),
    AFTER_SCHEME(STOP, "The scheme has ended by that day.", CLAIMS),
    CLAIM_CLOSED(STOP, "Certificates cannot be created after the closing date.", CLAIMS),
    CLAIM_CLOSING(CHECK, "Registry checks take weeks and the closing date does not move."),
    CLAIM_UNTOLD(CHECK, "Certificates that nobody claims are money that nobody gets."),
    COUNT_TOO_HIGH(STOP, "Each certificate claimed without entitlement carries a penalty.", CLAIMS),
    COUNT_TOO_LOW(CHECK, "The job earns more certificates than the register says."),
    COUNT_UNPROVED(CHECK, "A number that nobody worked out may claim too much or too little."),
    COUNT_MAY_BE_HIGHER(CHECK, "The rounding of the official method is not settled for this year."),
    STC_BASIS_DOUBTFUL(
            CHECK, "A number for this year that is taken for ten years halves the claim."),
    COUNT_ZERO(CHECK, "The job earns no certificate."),
    YEAR_BOUNDARY(NOTE, "One day later or earlier changes the number of certificates."),
    KEEP_UNTIL(NOTE, "Signed papers must be kept for the legal time."),
    VEEC_NOT_VICTORIA(STOP, "Only premises in Victoria earn VEECs.", claim(VEEC)),
    VEEC_ACTIVITY_UNCLEAR(
            STOP, "Old and new heater decide the activity and with it the count.", claim(VEEC)),
    VEEC_ACTIVITY_CLOSED(STOP, "The activity had ended by the day of the work.", claim(VEEC)),
    VEEC_NOT_LISTED(
            STOP,
            "The product must be on the Victorian register on the day of the work.",
            claim(VEEC)),
    VEEC_TABLE_MISSING(CHECK, "The number of VEECs needs a table that the firm has not entered."),
    VEEC_NOT_DECOMMISSIONED(STOP, "The old heater must be put out of use for good.", claim(VEEC)),
    VEEC_CO_PAYMENT_MISSING(
            STOP, "Without the minimum co-payment no certificate can be created.", claim(VEEC)),
    VEEC_WARRANTY_SHORT(STOP, "The product needs at least the prescribed warranty.", claim(VEEC)),
    VEEC_TOO_LARGE(STOP, "Systems above the limit belong to another activity.", claim(VEEC)),
    VEEC_SIZE_UNCLEAR(CHECK, "No limit was read for such a heater, and there may be one."),
    VEEC_VERSIONS_MIXED(
            STOP,
            "Figures of one version of the Specifications hold for that version only.",
            claim(VEEC)),
    VEEC_ROUNDING(CHECK, "Sources disagree about rounding and the number turns on it."),
    VEEC_UNUSUAL(NOTE, "The number lies outside what is usual."),
    VEEC_WAYS_DISAGREE(CHECK, "The listed count and the computed count differ."),

    // Money
    OFFER_MISSING(CHECK, "Without an offer in force no money can be expected."),
    OFFER_NOT_MET(CHECK, "The job does not meet the buyer's terms."),
    AMOUNTS_DIFFER(CHECK, "The tax, the co-payment and the discount are taken from these amounts."),
    PRICE_MISSING(CHECK, "Without the price no GST can be worked out."),

    ANSWER_UNUSED(CHECK, "A fact that somebody looked up must not get lost unseen."),
    ANSWER_TAKEN(NOTE, "Who compares papers and register must see what was typed elsewhere."),
    ANSWERS_ALONE(STOP, "Answers say nothing without the list that they complete.", REGISTER),

    // The firm's tables and templates
    TABLE_MISSING(STOP, "A table that the work needs is not there.", REGISTER),
    TABLE_EMPTY(NOTE, "What a table does not know, no job can have."),
    TABLE_TWICE(STOP, "Of two tables of one name nobody can tell which is meant.", REGISTER),
    SAMPLE_SHOWN(STOP, "Nothing invented may stand on the papers of a real firm.", JOB),
    TABLE_ROW_WRONG(CHECK, "A row of a table that cannot be used is left out."),
    TEMPLATE_BROKEN(STOP, "The paper could not be made from its template."),
    FORM_UNUSABLE(
            STOP, "A form that cannot be filled would go out empty or wrong.", CLAIMS_AND_WARRANTY),
    FORM_FIELD_MISSING(CHECK, "A value without a place on the form is missing from the paper."),
    FORM_FIELD_UNMAPPED(CHECK, "A buyer sends back a form whose required fields are empty."),
    FORM_CHOICE_UNKNOWN(CHECK, "A choice that the form does not offer is left open on the paper."),
    FORM_TEXT_TOO_LONG(
            CHECK, "Text that was cut, or is too small to read, says less than it should."),
    FORM_VALUE_UNSEEN(CHECK, "A value that nobody can see on the form counts as missing."),
    SIDE_FILE_LACKING(
            CHECK, "Papers and claims are whole, but somebody may look for the list beside them."),

    JOB_UNCHANGED(NOTE, "A job that is done needs no second pack, and its claim stands."),
    JOB_CANCELLED(NOTE, "A cancelled job is named once, in case the row was marked by mistake."),
    JOB_WITHDRAWN(CHECK, "A job that was booked out is not owed and must not come back unseen."),
    JOB_GONE(CHECK, "A claim whose job left the list is mostly one that must not be made."),
    JOB_FORGOTTEN(STOP, "What was forgotten on purpose must not come back by an old list.", JOB),
    JOB_CHANGE_UNTOLD(CHECK, "A job whose changes nobody can name counts as changed."),
    JOB_CHANGED(CHECK, "Papers with the earlier facts may already be in somebody's hands."),
    SIGNED_BEFORE_PRINTED(CHECK, "An owner cannot have signed a paper before it was there."),
    SERIAL_CLAIMED_BEFORE(STOP, "Certificates can be created once for a heater.", CLAIMS),
    SERIAL_LIKE_CLAIMED(CHECK, "Two serials that look alike are often one that was misread."),
    SITE_CLAIMED_BEFORE(STOP, "A second claim for one place must be for a second heater.", CLAIMS),
    CLAIM_UNDER_WAY(
            STOP, "New papers alone do not change a claim that the buyer has already.", CLAIMS),
    BATCH_LOST(CHECK, "A batch that was claimed must have its papers."),
    PAYMENT_UNMATCHED(CHECK, "Money that belongs to no claim leaves a claim looking unpaid."),
    PAYMENT_SHORT(CHECK, "What is not asked for is not paid."),
    PAYMENT_OVER(CHECK, "Money beyond the claim may be somebody else's, and may be taxed."),
    PAYMENT_TWICE(CHECK, "A payment counted twice hides one that never came."),
    PAYMENT_IN_FUTURE(
            CHECK,
            "Money that is yet to come may not come, and would count as received from now on."),
    PAYMENT_REVERSED(CHECK, "Money taken back is owed again."),
    SCAN_UNREADABLE(CHECK, "Signed papers in a file that cannot be read count as not back."),
    PAGE_UNPLACED(CHECK, "A page that nobody places is missing from its paper."),
    PAGE_TWICE(NOTE, "Of a page that came twice, one may be the one that was signed."),
    PAPER_INCOMPLETE(
            CHECK, "A paper with a page missing counts as not back, and may be sent back."),
    PAPER_OUTDATED(CHECK, "A signature on an older paper does not hold for the newer one."),
    BOX_BLANK(CHECK, "A paper with an empty box counts as unfinished, and may be sent back."),
    PHOTO_OF_OTHER_DAY(CHECK, "A picture of another day may show another job, and proves nothing."),
    PHOTO_OF_OTHER_PLACE(CHECK, "A picture of another state shows another job."),
    PHOTO_UNREADABLE(CHECK, "Nobody else will be able to open it either."),
    PHOTO_OF_NO_JOB(CHECK, "A file of no job is missing where its job is looked at."),
    CLAIM_FAILED(CHECK, "A failed claim brings nothing until it is mended and lodged again.");

    private final Severity severity;
    private final String why;
    private final Set<Concern> holds;

    FindingCode(Severity severity, String why, Concern... holds) {
        this(severity, why, Set.of(holds));
    }

    FindingCode(Severity severity, String why, Set<Concern> holds) {
        this.severity = severity;
        this.why = why;
        this.holds = holds;
    }

    /** The kebab-case name that people and other programs see, e.g. {@code serial-twice}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The code of that name; case does not count. */
    public static Optional<FindingCode> of(String name) {
        return Arrays.stream(values()).filter(c -> c.code().equalsIgnoreCase(name)).findFirst();
    }

    /** The usual severity. */
    public Severity severity() {
        return severity;
    }

    /** Why it matters, one sentence. */
    public String why() {
        return why;
    }

    /** What a stop of this code keeps from being produced. */
    public Set<Concern> holds() {
        return holds;
    }
}
