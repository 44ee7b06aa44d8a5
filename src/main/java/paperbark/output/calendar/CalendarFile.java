package paperbark.output.calendar;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VAlarm;
import biweekly.component.VEvent;
import biweekly.parameter.Related;
import biweekly.property.DateStart;
import biweekly.property.Status;
import biweekly.property.Trigger;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Date;
import java.util.List;
import org.apache.commons.codec.digest.DigestUtils;

/** Writes days as a calendar file. */
public final class CalendarFile {
    private static final String PRODUCT = "-//Paperbark//Office calendar//EN";
    private static final int NAME_LETTERS = 32;

    private CalendarFile() {}

    /**
     * Which state of the office a calendar shows. A later state has a higher number, so that a
     * calendar program takes its days for newer ones of those that it has.
     *
     * @param office what tells this office's days from those of others
     * @param number counts the changes
     * @param at moment of the newest change
     */
    public record State(String office, int number, Instant at) {}

    /** The file: the same days and state give the same bytes. */
    public static byte[] of(String title, List<CalendarDay> days, State state) {
        ICalendar calendar = new ICalendar();
        calendar.setProductId(PRODUCT);
        // RFC 5545 3.7.2: a calendar that is only shown, with nobody invited
        calendar.setMethod("PUBLISH");
        calendar.setName(title);
        days.forEach(day -> calendar.addEvent(event(day, state)));
        return Biweekly.write(calendar).go().getBytes(StandardCharsets.UTF_8);
    }

    private static VEvent event(CalendarDay day, State state) {
        VEvent event = new VEvent();
        // RFC 5545 3.8.4.7: the same name for good; RFC 7986 5.3: nothing of persons in it
        event.setUid(
                DigestUtils.sha256Hex(state.office() + " " + day.name())
                        .substring(0, NAME_LETTERS));
        event.setDateTimeStamp(Date.from(state.at()));
        event.setSequence(state.number());
        event.setDateStart(new DateStart(whole(day.day())));
        event.setSummary(day.title());
        event.setDescription(day.text());
        event.setTransparency(true);
        event.setStatus(day.cancelled() ? Status.cancelled() : Status.confirmed());
        if (!day.cancelled()) {
            day.warnings().forEach(before -> event.addAlarm(warning(day, before)));
        }
        return event;
    }

    private static VAlarm warning(CalendarDay day, int before) {
        Duration prior = Duration.builder().prior(true).days(before).build();
        return VAlarm.display(
                new Trigger(prior, Related.START), day.title() + ", in " + before + " days");
    }

    private static ICalDate whole(LocalDate day) {
        return new ICalDate(
                new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth()),
                false);
    }
}
