package paperbark.output;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.job.Job;
import paperbark.value.Address;
import paperbark.value.Serial;

/**
 * What a label can say of a job.
 *
 * @param job the job number
 * @param owner all who own the heater
 * @param site where the heater stands
 * @param position where on the property, where several heaters share an address
 * @param installedOn day of the installation; empty while it is only booked
 * @param visitOn day of the planned visit
 * @param crew the crew's name
 * @param maker maker as the register says
 * @param model model as the register says
 * @param tankSerial serial of the tank
 */
public record Label(
        String job,
        Optional<String> owner,
        Address site,
        Optional<String> position,
        Optional<LocalDate> installedOn,
        Optional<LocalDate> visitOn,
        Optional<String> crew,
        Optional<String> maker,
        Optional<String> model,
        Optional<Serial> tankSerial) {

    /** The label of a job. */
    public static Label of(Job job) {
        return new Label(
                job.reference(),
                job.owner().names(),
                job.site().address(),
                job.site().position(),
                job.installedOn(),
                job.visit().on(),
                job.visit().crew(),
                job.heater().makerName(),
                job.heater().model(),
                job.heater().tankSerial());
    }
}
