package paperbark.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.batch.Ending;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBusyException;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;

/** Looks an office folder over and says what to do. It changes nothing that lasts. */
public final class Doctor {
    private final Office office;
    private final List<CheckResult> checks = new ArrayList<>();

    private Doctor(Office office) {
        this.office = office;
    }

    /**
     * Looks at everything.
     *
     * @param now moment, for people only
     * @param today the office's day
     * @param clockRight whether a person says that the clock is right, whatever the newest batch
     *     says
     * @throws IOException when the folder itself cannot be read
     */
    public static List<CheckResult> examine(
            Office office, Instant now, LocalDate today, boolean clockRight) throws IOException {
        Doctor doctor = new Doctor(office);
        FolderCheck check = new FolderCheck(office);
        List<CheckResult> folders = check.folders();
        doctor.checks.addAll(folders);
        doctor.checks.addAll(check.photos());
        doctor.checks.addAll(check.readers());
        doctor.checks.add(check.space());
        if (folders.stream().allMatch(CheckResult::isWell)) {
            doctor.checks.add(check.oneFileSystem());
        }
        doctor.equipment();
        doctor.ledger(today, clockRight);
        doctor.attended(now);
        return List.copyOf(doctor.checks);
    }

    private void equipment() throws IOException {
        add(
                "tables",
                Equipment.tables(office.tables()),
                "can be read: " + Equipment.counts(office.tables()));
        add("rule tables", Equipment.rules(office.rules()), "can be read");
        add("templates", Equipment.templates(office.templates()), "can be read, every one");
        checks.add(
                Equipment.hasTypeface()
                        ? CheckResult.well("typeface", "is whole")
                        : CheckResult.setup("typeface", "is damaged. Install the program again."));
    }

    private void add(String what, List<String> wrong, String well) {
        if (wrong.isEmpty()) {
            checks.add(CheckResult.well(what, well));
        }
        wrong.forEach(w -> checks.add(CheckResult.setup(what, w)));
    }

    private void ledger(LocalDate today, boolean clockRight) throws IOException {
        Optional<String> trouble;
        List<String> noticed = new ArrayList<>();
        try {
            trouble = LedgerProof.trouble(office, noticed);
        } catch (LedgerBusyException e) {
            checks.add(new CheckResult("ledger", Ending.BUSY, e.getMessage()));
            return;
        } catch (UncheckedIOException e) {
            checks.add(CheckResult.disk("ledger", e.getCause().getMessage()));
            return;
        }
        if (trouble.isPresent()) {
            checks.add(new CheckResult("ledger", Ending.UNTRUSTED, trouble.orElseThrow()));
            return;
        }
        if (office.ledger() instanceof LedgerPlace.InFile file && !Files.isWritable(file.path())) {
            checks.add(CheckResult.disk("ledger", "may be read, but not written: " + file.path()));
        }
        try (Ledger ledger = Ledger.open(office.ledger())) {
            checks.add(
                    CheckResult.well(
                            "ledger",
                            "is as it was written, and agrees with batches, advices, copies and filed"
                                    + " registers; its last is "
                                    + ledger.records().lastSeal()));
            noticed.forEach(line -> checks.add(CheckResult.setup("packs", line)));
            checks.add(key(ledger));
            checks.add(new FutureBatches(office, ledger).check(today, clockRight));
        }
    }

    private CheckResult key(Ledger ledger) {
        String name = office.ledger().key().getFileName().toString();
        try {
            return ledger.hasItsKey()
                    ? CheckResult.well("key", "fits the ledger")
                    : CheckResult.setup(
                            "key",
                            name
                                    + " is missing, or is not the one of the newest batch, and what"
                                    + " changed in earlier jobs cannot be told. Bring it back; where"
                                    + " offices share the ledger, copy it from another.");
        } catch (LedgerException e) {
            return CheckResult.setup("key", e.getMessage());
        }
    }

    private void attended(Instant now) throws IOException {
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            checks.add(CheckResult.well("lock", "is free: no program attends the folder"));
            checks.addAll(new Leftovers(lock.office(), now).look());
        } catch (OfficeLock.Busy busy) {
            checks.add(CheckResult.well("lock", busy.getMessage().strip()));
        } catch (IOException e) {
            checks.add(
                    CheckResult.disk(
                            "lock",
                            "cannot be taken. Give yourself the right to write in the folder."));
        }
    }
}
