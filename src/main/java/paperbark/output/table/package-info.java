/**
 * A small model of a table of values, and the tables that tell of a whole batch: jobs,
 * certificates, money expected, GST, closing dates, findings, rules.
 *
 * <p>A {@link paperbark.output.BatchView} enters; tables leave, with every derived figure both as
 * worked out here and as a formula that a spreadsheet can follow. Deliberately absent: cells,
 * styles, HTML, files and any decision about a job.
 */
package paperbark.output.table;
