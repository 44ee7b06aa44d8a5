/**
 * Workbooks: the accountant's summary, and the admin's own register with every finding marked in
 * its cell.
 *
 * <p>Tables and findings enter, the bytes of an .xlsx file leave; the same input gives the same
 * bytes. Text never becomes a formula. Deliberately absent: writing to files, evaluating anybody's
 * formulas, macros, links to other files, the clock.
 */
package paperbark.output.workbook;
