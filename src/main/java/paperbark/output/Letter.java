package paperbark.output;

import paperbark.job.Job;
import paperbark.value.Address;

/**
 * Where a letter to an owner goes.
 *
 * @param job the job number
 * @param owner all who own the heater; empty text where none is known
 * @param contact the person to speak to, for organisations; may be empty
 * @param address where the owner gets letters, which need not be where the heater stands
 */
public record Letter(String job, String owner, String contact, Address address) {

    /** The letter to the owner of a job. */
    public static Letter of(Job job) {
        return new Letter(
                job.reference(),
                job.owner().names().orElse(""),
                job.owner().contact().orElse(""),
                job.owner().postal());
    }

    /** Whether it would arrive. */
    public boolean isComplete() {
        return !owner.isEmpty() && address.isComplete();
    }
}
