package paperbark.settle;

import java.util.Locale;
import paperbark.sheet.ColumnField;

/** Everything that a buyer's payment advice can say of a claim. */
public enum AdviceField implements ColumnField {
    CLAIM("Claim reference"),
    BUYER_REFERENCE("Buyer's reference"),
    JOB("Job"),
    SERIAL("Serial"),
    SCHEME("Scheme"),
    CERTIFICATES("Certificates"),
    AMOUNT("Amount"),
    PAID_DATE("Paid on"),
    STATUS("Status"),
    REASON("Reason"),
    BUYER("Buyer");

    private final String label;

    AdviceField(String label) {
        this.label = label;
    }

    @Override
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Override
    public String label() {
        return label;
    }

    /**
     * No column is needed by all: a list of failed claims has no amount, one of payments no status.
     */
    @Override
    public boolean isNeeded() {
        return false;
    }
}
