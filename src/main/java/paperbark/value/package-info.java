/**
 * The trade's small values: valid or non-existent. Each is a record made by {@code parse}, which
 * gives either the value or a fact and a remedy, without a place.
 *
 * <p>Deliberately absent: files, the clock, spreadsheets, floating point.
 */
package paperbark.value;
