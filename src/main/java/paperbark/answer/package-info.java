/**
 * Answers to questions that change nothing: how the certificates of a job come about, which rules
 * are in force, what a paper will look like; and all of it as JSON for other programs.
 *
 * <p>Reads as a batch does and writes only where somebody asked for a file. Deliberately absent:
 * the ledger, and how an answer looks on the terminal.
 */
package paperbark.answer;
