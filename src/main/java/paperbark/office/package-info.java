/**
 * The office folder: the admin drops a register and walks away. It is made, proved, backed up,
 * rebuilt and made to forget here.
 *
 * <p>A register is in one place at any time: {@code intake}, {@code work}, {@code filed} or {@code
 * returned}. Each step between them is one rename on one file system, and the ledger's commit is
 * the one decision; whatever is cut short is finished or begun again by the next start.
 *
 * <p>Deliberately absent: how a register becomes papers, and the terminal.
 */
package paperbark.office;
