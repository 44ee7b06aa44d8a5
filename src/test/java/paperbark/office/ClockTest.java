package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.Batch;
import paperbark.batch.Ending;
import paperbark.batch.Request;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerId;
import paperbark.ledger.LedgerPlace;

/** The computer's clock and zone alter no paper, and lose and double no register. */
class ClockTest {
    // What the ledger tells of persons is salted anew each time, and the manifest has its hash:
    // these two are compared but for their digests, the manifest's of the ledger's entry only.
    private static final List<String> SALTED = List.of("ledger.json", "manifest.json");

    private static final ZoneId MELBOURNE = ZoneId.of("Australia/Melbourne");

    @TempDir private Path folder;

    private final TimeZone before = TimeZone.getDefault();

    @BeforeEach
    @AfterEach
    void restoreTheZone() {
        TimeZone.setDefault(before);
    }

    /** Clocks go forward at 2 o'clock on 4 October and back at 3 on 5 April. */
    @ParameterizedTest
    @ValueSource(strings = {"2026-10-04T02:30", "2026-04-05T02:30", "2026-04-05T23:59"})
    @Tag("slow")
    void whateverTheZoneTheSameBytesComeOut(String local) throws IOException {
        Instant at = LocalDateTime.parse(local).atZone(MELBOURNE).toInstant();
        LocalDate day = LocalDate.parse(local.substring(0, 10));
        Map<String, String> first = Map.of();
        for (String zone :
                List.of(
                        "UTC",
                        "Australia/Melbourne",
                        "America/Los_Angeles",
                        "Australia/Lord_Howe",
                        "Pacific/Kiritimati")) {
            TimeZone.setDefault(TimeZone.getTimeZone(zone));
            Map<String, String> made = prepare(zone.replace('/', '-'), at, day);
            assertThat(made).containsKeys("packs/J-1.pdf", "summary.xlsx", "ledger.json");
            if (!first.isEmpty()) {
                Map<String, String> expected = first;
                assertThat(made.keySet()).isEqualTo(expected.keySet());
                assertThat(made.keySet())
                        .as("files that differ in " + zone)
                        .filteredOn(file -> !made.get(file).equals(expected.get(file)))
                        .isEmpty();
            }
            first = made;
        }
    }

    /** One job, installed on the third of that month. */
    private Map<String, String> prepare(String name, Instant at, LocalDate day) throws IOException {
        Path place = Files.createDirectories(folder.resolve(name));
        LedgerPlace ledger = new LedgerPlace.InFile(place.resolve("paperbark.db"));
        Ledger.rebuild(ledger, new LedgerId("an office", "2026-01-01T00:00:00Z"), List.of());
        // The same key, so that the prints can be compared.
        Files.writeString(ledger.key(), "ab".repeat(32) + "\n");
        String shown = "%02d/%02d/%d".formatted(3, day.getMonthValue(), day.getYear());
        Path register =
                Files.writeString(
                        place.resolve("week.csv"),
                        Offices.register(1).replaceAll("1[67]/11/2026", shown));
        new Batch((what, done, of) -> {})
                .prepare(
                        new Request(
                                new Request.Register(register, Optional.empty()),
                                new Request.FirmFiles(
                                        Path.of("input-samples/tables"),
                                        Optional.empty(),
                                        Optional.empty()),
                                place.resolve("packs"),
                                new Request.Run(day, at, "test"),
                                new Request.Extras(false, true, false, false, false),
                                new Request.LedgerUse(Optional.of(ledger), false)));
        Path batch =
                Office.list(place.resolve("packs")).stream()
                        .filter(f -> !Office.isHidden(f))
                        .findFirst()
                        .orElseThrow();
        Map<String, String> made = new TreeMap<>();
        for (Path file : Invariants.files(batch)) {
            String path = batch.relativize(file).toString();
            made.put(
                    path,
                    SALTED.contains(path)
                            ? Files.readString(file)
                                    .replaceAll(
                                            path.equals("ledger.json")
                                                    ? "\\b[0-9a-f]{64}\\b"
                                                    : "(?s)\"ledger.json\" : \\{.*?\\}",
                                            "x")
                            : Invariants.sha256(file));
        }
        return made;
    }

    private Office office;
    private Instant now = Instant.parse("2026-11-23T01:00:00Z");
    private LocalDate today = LocalDate.of(2026, 11, 23);
    private final List<String> dropped = new ArrayList<>();

    private void drop(String name, int job, Instant modified) throws IOException {
        Path file = Files.writeString(office.intake().resolve(name), Offices.register(job));
        Files.setLastModifiedTime(file, FileTime.from(modified));
        dropped.add(Invariants.sha256(file));
    }

    @Test
    void aClockThatGoesBackBetweenTwoLooksLosesAndDoublesNothing() throws Exception {
        office = Offices.make(folder.resolve("office"));
        List<Ending> endings = new ArrayList<>();
        try (OfficeLock lock = OfficeLock.take(office, now)) {
            Attendant attendant =
                    new Attendant(
                            lock,
                            new Attendant.World(
                                    () -> now,
                                    () -> today,
                                    Duration.ofSeconds(10),
                                    30,
                                    "test",
                                    line -> {}));
            drop("one.csv", 1, now);
            endings.addAll(attendant.round().endings());
            back(Duration.ofHours(30));
            endings.addAll(attendant.round().endings());
            now = now.plusSeconds(11);
            endings.addAll(attendant.round().endings());
            assertThat(endings).as("taken before the clock has caught up").hasSize(1);
            drop("two.csv", 2, now.plus(Duration.ofDays(400)));
            for (int i = 0; i < 4; i++) {
                now = now.plusSeconds(11);
                endings.addAll(attendant.round().endings());
                Invariants.hold(office.root(), dropped);
            }
            back(Duration.ofDays(3));
            drop("again.csv", 1, now.minusSeconds(60));
            for (int i = 0; i < 3; i++) {
                now = now.plusSeconds(11);
                endings.addAll(attendant.round().endings());
                Invariants.hold(office.root(), dropped);
            }
        }
        assertThat(endings).containsExactly(Ending.DONE, Ending.DONE, Ending.ALREADY);
        Invariants.atRest(office.root(), 2);
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
        }
    }

    private void back(Duration by) {
        now = now.minus(by);
        today = now.atZone(MELBOURNE).toLocalDate();
    }
}
