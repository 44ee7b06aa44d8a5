package paperbark.batch;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import paperbark.job.Job;
import paperbark.output.CaseFile;
import paperbark.value.Days;
import paperbark.value.Email;
import paperbark.value.Serial;

/**
 * What the drafts of a batch's letters need to know of its jobs and no ledger tells: whom a job is
 * for and what was put in where. Jobs that are only booked are left out, because nothing of theirs
 * leaves the house yet. No account number is in it.
 *
 * @param batch name of the batch
 * @param jobs those of which something is to be sent
 */
public record Recipients(String batch, List<OfJob> jobs) {
    /** Name of the file in a batch folder. */
    public static final String FILE = "recipients.json";

    private static final ObjectMapper JSON =
            new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    /** Keeps the list from being changed. */
    public Recipients {
        jobs = List.copyOf(jobs);
    }

    /**
     * One job; what is not known is empty text.
     *
     * @param job the job number
     * @param pack path of its pack in the batch folder
     * @param owner all who own the heater, or whom to speak to
     * @param email the owner's address
     * @param account whether the owner's account is known and may stand on assignments
     * @param site where the heater stands, on one line
     * @param installedOn the day in words
     * @param maker name of the heater's maker as the tables have it
     * @param heater maker and model
     * @param serial the tank's serial
     */
    public record OfJob(
            String job,
            String pack,
            String owner,
            String email,
            boolean account,
            String site,
            String installedOn,
            String maker,
            String heater,
            String serial) {

        private static OfJob of(CaseFile file) {
            Job job = file.job();
            return new OfJob(
                    job.reference(),
                    "packs/" + file.packFile(),
                    job.owner().names().or(job.owner()::contact).orElse(""),
                    job.owner().email().map(Email::full).orElse(""),
                    job.payment().account().isPresent() || job.payment().bsb().isPresent(),
                    job.site().address().toString(),
                    file.doneOn().map(Days::show).orElse(""),
                    job.heater().maker().map(m -> m.name()).orElse(""),
                    heater(job),
                    job.heater().tankSerial().map(Serial::toString).orElse(""));
        }

        private static String heater(Job job) {
            return (job.heater().makerName().orElse("") + " " + job.heater().model().orElse(""))
                    .strip();
        }
    }

    /** Those of a batch. */
    static Recipients of(String batch, List<CaseFile> cases) {
        return new Recipients(
                batch, cases.stream().filter(c -> !c.job().isBooked()).map(OfJob::of).toList());
    }

    /**
     * Those of a published batch; empty where it is of an earlier program, or could not tell.
     *
     * @throws IOException when the file cannot be read
     */
    public static Optional<Recipients> in(Path batch) throws IOException {
        Path file = batch.resolve(FILE);
        return Files.isRegularFile(file)
                ? Optional.of(JSON.readValue(Files.readAllBytes(file), Recipients.class))
                : Optional.empty();
    }

    /** The same without the jobs of these numbers. */
    public Recipients without(Predicate<String> job) {
        return new Recipients(batch, jobs.stream().filter(j -> !job.test(j.job())).toList());
    }

    /** As it is written. */
    public byte[] toJson() throws JsonProcessingException {
        return (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8);
    }
}
