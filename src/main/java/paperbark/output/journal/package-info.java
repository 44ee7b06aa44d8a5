/**
 * The sales of a batch in double entry: as CSV for any bookkeeping program, and as plain text.
 *
 * <p>Deliberately absent: names of owners, booked and held claims, and money that came, which the
 * bank tells.
 */
package paperbark.output.journal;
