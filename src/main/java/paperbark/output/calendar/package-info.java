/**
 * The office's days as a calendar file (RFC 5545) that calendar programs subscribe to or import.
 *
 * <p>{@link paperbark.output.calendar.CalendarDay}s enter, one file leaves. Deliberately absent:
 * whatever is known of owners, files, the clock.
 */
package paperbark.output.calendar;
