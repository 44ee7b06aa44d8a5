/**
 * Dated, sourced tables: load, prove, look up by day.
 *
 * <p>Tables hold the numbers, code holds the formulas. The shipped tables lie among the resources
 * under {@code rules/}, beside a page on how the rules were read; a firm may put newer ones beside
 * its own tables. To add a table: a CSV file, a row record such as {@link
 * paperbark.rules.YearsRow}, a line in the loader and a component in {@link
 * paperbark.rules.Rulebook}.
 *
 * <p>Deliberately absent: jobs, and any default for a day or key without a row.
 */
package paperbark.rules;
