/**
 * The firm's own tables: who it is, its people and their licences, makers, products, sellers,
 * buyers, offers and the certificates that each state asks for. They are facts that the firm looks
 * up, so they are data and never code.
 *
 * <p>Read by the same reader as the register, from a folder of CSV files or one workbook with a
 * sheet per table. Deliberately absent: any judgement of a job.
 */
package paperbark.firm;
