/**
 * What people get to see. {@link paperbark.output.CaseFile} is all that a template, workbook or
 * page may know of a job.
 *
 * <p>The sub-packages {@code paper}, {@code form}, {@code workbook} and {@code index} do not see
 * each other. Deliberately absent: rows of the register, rule tables, the clock and any decision.
 */
package paperbark.output;
