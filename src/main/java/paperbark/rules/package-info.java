/**
 * Dated, sourced tables: load, prove, look up by day.
 *
 * <p>Tables hold the numbers, code holds the formulas. The shipped tables lie among the resources;
 * a firm may put newer ones beside its own tables. Deliberately absent: jobs, and any default for a
 * day or key without a row.
 */
package paperbark.rules;
