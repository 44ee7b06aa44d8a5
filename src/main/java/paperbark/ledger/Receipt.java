package paperbark.ledger;

import java.time.LocalDate;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * Money that an advice told of.
 *
 * @param day on which it came, or was taken back
 * @param scheme of the claim it is for
 * @param amount negative where it was taken back
 */
public record Receipt(LocalDate day, SchemeName scheme, Money amount) {}
