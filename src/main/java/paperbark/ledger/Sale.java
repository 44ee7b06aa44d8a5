package paperbark.ledger;

import java.time.LocalDate;
import paperbark.value.Money;

/**
 * What the owner was charged, for the year's figures.
 *
 * @param installedOn day of the installation
 * @param price full price with GST, before certificates
 * @param gst GST included in it; zero where the firm is not registered
 */
public record Sale(LocalDate installedOn, Money price, Money gst) {}
