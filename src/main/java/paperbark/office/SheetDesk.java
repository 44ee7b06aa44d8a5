package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.batch.AnswerBook;
import paperbark.disk.Disk;
import paperbark.disk.Hashes;
import paperbark.finding.Finding;
import paperbark.job.Answers;
import paperbark.job.Field;
import paperbark.job.Stage;
import paperbark.ledger.Ledger;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.output.paper.FormId;
import paperbark.scan.FilledForm;

/**
 * Takes in what was typed on a site sheet with live fields: it goes into the intake as answers to
 * what was missing, those of one register in one file, and from there the way of all answers.
 */
final class SheetDesk {
    private static final String ANSWERS = "site-sheets-";
    private static final int LETTERS = 8;

    private final Office office;

    SheetDesk(Office office) {
        this.office = office;
    }

    /** Whether a file of the intake holds what was typed on site sheets. */
    static boolean isAnswers(Path file) {
        return file.getFileName().toString().matches(ANSWERS + "[0-9a-f]{" + LETTERS + "}\\.xlsx");
    }

    /** Whether these bytes were taken in before. */
    boolean isFiled(Path file) throws IOException {
        long size = Files.size(file);
        String sha256 = Hashes.sha256(file);
        for (Path year : Office.list(office.filed())) {
            for (Path filed : Office.list(year.resolve(ScanDesk.FILED))) {
                if (Files.size(filed) == size && Hashes.sha256(filed).equals(sha256)) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * Puts what was typed into the intake.
     *
     * @return why it cannot be; empty where it lies there
     * @throws IOException when a file cannot be read or written
     */
    Optional<Finding> take(Path file, FilledForm form) throws IOException {
        if (form.typed().isEmpty()) {
            return Optional.of(
                    AnswerBook.alone(
                            file,
                            "Nothing is typed in the fields of the sheet for job "
                                    + form.id().job()
                                    + ".",
                            "Fill the sheet in, save it and drop it again."));
        }
        Answers answers = answers(form);
        AnswerDesk desk = new AnswerDesk(office);
        AnswerDesk.Result register = desk.register(file, answers);
        if (register.register().isEmpty()) {
            return Optional.of(register.findings().get(0));
        }
        if (isCalledOff(form.id().job())) {
            return Optional.of(
                    AnswerBook.alone(
                            file,
                            "Job " + form.id().job() + " was called off or replaced.",
                            "Put the job into a list again where the heater was fitted all the same."));
        }
        Optional<AnswerDesk.Result> late = desk.outOfDate(file, answers);
        if (late.isPresent()) {
            return Optional.of(late.get().findings().get(0));
        }
        Path all =
                office.intake()
                        .resolve(ANSWERS + form.id().register().substring(0, LETTERS) + ".xlsx");
        Answers before = Files.exists(all) ? AnswerBook.answers(all) : Answers.NONE;
        Disk.replace(all, AnswerBook.of(before.with(answers)));
        return Optional.empty();
    }

    private static Answers answers(FilledForm form) {
        FormId id = form.id();
        Map<String, String> typed = new HashMap<>(form.typed());
        // Work without a claim keeps its stage, or a claim would come of it.
        if (id.stage() == Stage.BOOKED && typed.containsKey(Field.INSTALLED_DATE.key())) {
            typed.put(Field.STAGE.key(), Stage.INSTALLED.word());
        }
        return Answers.of(id.job(), typed, id.register(), id.sheet(), id.row());
    }

    private boolean isCalledOff(String job) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            List<PaperState> papers = new ScanBook(ledger).papers(job);
            return !papers.isEmpty() && papers.stream().allMatch(PaperState::withdrawn);
        }
    }
}
