/**
 * The firm's headings become our fields, a row becomes a {@link paperbark.job.Job}; checks on cell,
 * row and batch.
 *
 * <p>Rows and the firm's tables enter; jobs and findings leave. Deliberately absent: certificates,
 * money, files, and the clock: today is an argument.
 */
package paperbark.job;
