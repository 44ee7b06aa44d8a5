package paperbark.output;

import java.util.List;
import java.util.Optional;
import paperbark.value.Email;
import paperbark.value.Phone;

/**
 * What the text of a draft e-mail may tell. Account numbers are not among it.
 *
 * @param firm the installing firm's name
 * @param phone its office telephone
 * @param email its e-mail
 * @param to whom the letter is for; empty text where that is not known
 * @param batch name of the batch
 * @param jobs the jobs that it is about
 * @param claim the claim that a buyer gets the papers of
 * @param enclosed what goes with it
 * @param apart what belongs to it and does not go with it
 */
public record LetterView(
        String firm,
        Optional<Phone> phone,
        Optional<Email> email,
        String to,
        String batch,
        List<OfJob> jobs,
        Optional<OfClaim> claim,
        List<Enclosed> enclosed,
        List<Apart> apart) {

    /** Keeps the lists from being changed. */
    public LetterView {
        jobs = List.copyOf(jobs);
        enclosed = List.copyOf(enclosed);
        apart = List.copyOf(apart);
    }

    /** Whether a paper that people sign is enclosed and not back signed. */
    public boolean isUnsigned() {
        return enclosed.stream().anyMatch(Enclosed::isUnsigned);
    }

    /** What whoever sends it should look at first, a sentence's words each. */
    public List<String> looks() {
        return enclosed.stream().map(Enclosed::look).filter(l -> !l.isEmpty()).toList();
    }

    /**
     * A job; what is not known is empty text.
     *
     * @param job the job number
     * @param owner who owns the heater
     * @param site where it stands, on one line
     * @param installedOn the day of the installation
     * @param heater maker and model
     * @param serial the tank's serial
     */
    public record OfJob(
            String job,
            String owner,
            String site,
            String installedOn,
            String heater,
            String serial) {}

    /**
     * A claim as the ledger has it.
     *
     * @param name its name: job number, hyphen and scheme
     * @param scheme the scheme's word
     * @param certificates how many
     * @param expected money to the firm, or that no price is known where no offer was taken
     * @param toOwner money to the owner; empty text where no offer says it
     * @param lodgeBy last day on which the certificates can be created; may be empty
     * @param due day on which the money should be there; may be empty
     */
    public record OfClaim(
            String name,
            String scheme,
            int certificates,
            String expected,
            String toOwner,
            String lodgeBy,
            String due) {}

    /**
     * A file that goes with it.
     *
     * @param job the job that it is of; empty text for lists
     * @param what what it is, such as the paper's name
     * @param file its name
     * @param state such as {@code signed}; empty text for what nobody signs
     * @param isUnsigned whether people sign it and it is not back with all its pages
     * @param look what whoever sends it should look at first, in words; empty text where nothing
     */
    public record Enclosed(
            String job, String what, String file, String state, boolean isUnsigned, String look) {}

    /**
     * Something that does not go with it.
     *
     * @param what what it is, or its file's name
     * @param why the reason, in a sentence
     */
    public record Apart(String what, String why) {}
}
