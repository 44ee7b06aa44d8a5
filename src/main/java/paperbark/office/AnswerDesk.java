package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import paperbark.batch.AnswerBook;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.disk.Hashes;
import paperbark.finding.Finding;
import paperbark.job.Answers;
import paperbark.job.Answers.Answer;
import paperbark.ledger.Batches;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;

/**
 * Takes in a workbook in which missing facts were answered: finds the register that it belongs to
 * and makes a copy of that with the answers behind it, which is then prepared like any register.
 */
final class AnswerDesk {
    private final Office office;

    AnswerDesk(Office office) {
        this.office = office;
    }

    /** Whether a dropped file is such a workbook. */
    boolean isAnswers(Path file) {
        return AnswerBook.isAlone(file, office.tables());
    }

    /**
     * What came of it.
     *
     * @param register the register with the answers behind it; empty where there is none
     * @param findings why there is none
     */
    record Result(Optional<Path> register, List<Finding> findings) {
        private static Result refused(Path file, String fact, String remedy) {
            return new Result(Optional.empty(), List.of(AnswerBook.alone(file, fact, remedy)));
        }
    }

    /**
     * The register with the answers behind it, in a folder. It is made anew each time, with the
     * same bytes.
     *
     * @throws IOException when a file cannot be read or written
     */
    Result completed(Path file, Path folder) throws IOException {
        Answers answers = AnswerBook.answers(file);
        Result found = register(file, answers);
        if (found.register().isEmpty()) {
            return found;
        }
        Path register = found.register().get();
        byte[] content = AnswerBook.completed(register, answers, office.tables());
        // What a run that was cut had taken in already is no later list.
        if (batches(Hashes.sha256(content)).isEmpty()) {
            Optional<Result> stale = outOfDate(file, answers);
            if (stale.isPresent()) {
                return stale.get();
            }
        }
        Path completed = folder.resolve(FileNames.stem(register) + ".xlsx");
        Disk.makeFolders(folder);
        Disk.replace(completed, content);
        return new Result(Optional.of(completed), List.of());
    }

    /**
     * The register that answers complete, as it was filed.
     *
     * @param file where the answers were typed
     * @throws IOException when a file cannot be read
     */
    Result register(Path file, Answers answers) throws IOException {
        if (answers.all().isEmpty()) {
            return Result.refused(
                    file,
                    "Nothing is filled in under \"Answer\".",
                    "Type the answers and drop the file again.");
        }
        Set<String> registers = registers(answers);
        if (registers.size() > 1) {
            return Result.refused(
                    file,
                    "The answers belong to " + registers.size() + " registers.",
                    "Leave the rows of each batch in its own file.");
        }
        String sha256 = registers.iterator().next();
        Optional<Path> register = filed(batches(sha256), sha256);
        return register.isPresent()
                ? new Result(register, List.of())
                : Result.refused(
                        file,
                        "The register that these answers complete is not in filed/.",
                        "Look whether the file comes from another office, or type the facts in the register.");
    }

    private static Set<String> registers(Answers answers) {
        return answers.all().stream()
                .map(Answer::register)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Why the answers come too late, where a later list has their jobs. */
    Optional<Result> outOfDate(Path file, Answers answers) {
        List<String> stale = stale(answers, batches(registers(answers).iterator().next()));
        return stale.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Result.refused(
                                file,
                                "A later list has these jobs too, so the answers are out of date: "
                                        + String.join(", ", stale)
                                        + ".",
                                "Answer in the still-missing.xlsx of the newest batch that has them."));
    }

    private List<String> batches(String sha256) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger.batches().of(sha256).stream().map(Batches.BatchState::name).toList();
        }
    }

    private Optional<Path> filed(List<String> batches, String sha256) throws IOException {
        for (Path year : Office.list(office.filed())) {
            for (String batch : batches) {
                for (Path file : Office.list(year.resolve(batch))) {
                    if (Files.isRegularFile(file) && Hashes.sha256(file).equals(sha256)) {
                        return Optional.of(file);
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Jobs whose newest version is of another batch than those of the register. */
    private List<String> stale(Answers answers, List<String> batches) {
        Set<String> jobs = new TreeSet<>();
        answers.all().forEach(a -> jobs.add(a.job()));
        List<String> stale = new ArrayList<>();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            for (String job : jobs) {
                List<JobVersion> versions = ledger.versions(job);
                boolean newest =
                        versions.isEmpty()
                                || versions.stream()
                                        .max(Comparator.comparing(JobVersion::number))
                                        .filter(v -> batches.contains(v.batch()))
                                        .isPresent();
                if (!newest) {
                    stale.add(job);
                }
            }
        }
        return stale;
    }
}
