/**
 * How many certificates a job earns under each scheme, each number with its written working.
 *
 * <p>A job, the rulebook and today's date enter; counts, closing dates, working and findings leave.
 * Deliberately absent: money, files, the clock, floating point.
 */
package paperbark.entitlement;
