package paperbark.ledger;

import java.time.LocalDate;
import paperbark.value.Money;

/**
 * A line of a buyer's payment advice as it goes into the ledger.
 *
 * @param key what makes it the same line when it comes again, in whatever file
 * @param row row of the file
 * @param day day of the payment or notice
 * @param amount what was paid; negative for a reversal, nothing for a notice
 * @param reference the reference that the buyer wrote, as it stands; may be empty
 */
public record AdviceLine(String key, int row, LocalDate day, Money amount, String reference) {}
