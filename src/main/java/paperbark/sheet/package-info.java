/**
 * Spreadsheets and CSV files become rows of cells that know where they came from.
 *
 * <p>A file is read whole or refused with findings. Values are raw types, never the displayed text.
 * Deliberately absent: what a column means, and any way to write: the admin's original is only ever
 * opened for reading.
 */
package paperbark.sheet;
