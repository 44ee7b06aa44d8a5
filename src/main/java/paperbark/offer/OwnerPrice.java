package paperbark.offer;

import paperbark.value.Money;

/**
 * What the owner pays. GST is an eleventh of the full price, never of what is paid after the
 * assignment of certificates: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820).
 *
 * @param fullPrice heater and installation with GST
 * @param assigned value of the certificates assigned as a discount; no GST
 * @param payable full price less what was assigned
 * @param gst GST included in the full price; zero where the firm is not registered
 * @param gstDivisor 11 means that an eleventh of the full price is GST
 */
public record OwnerPrice(
        Money fullPrice, Money assigned, Money payable, Money gst, int gstDivisor) {}
