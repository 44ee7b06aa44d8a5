/**
 * Problems and notes with their place: the catalogue of codes and the wording that goes with them.
 *
 * <p>Nothing enters here but text and numbers. Deliberately absent: files, streams, spreadsheets
 * and any knowledge of what a job is; whoever shows findings (terminal, marked-up register, index
 * page, cover sheet) does so from these records.
 */
package paperbark.finding;
