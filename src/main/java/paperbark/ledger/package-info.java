/**
 * What was claimed before, and what became of the money: one database in which rows are only ever
 * added, each entry sealed by a digest that also covers the entry before it.
 *
 * <p>Deliberately absent: the clock, files of any other kind, and what the certificates are worth;
 * amounts come in as they were worked out.
 */
package paperbark.ledger;
