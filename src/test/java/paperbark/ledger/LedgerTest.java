package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What a ledger does, wherever it is; see also {@link LedgerOnServerTest}. */
class LedgerTest {
    @TempDir private Path folder;

    private LedgerPlace place;
    private byte[] sound;

    @BeforeEach
    void makeOne() {
        place = place(folder);
        Ledger.create(place, Instant.parse("2026-11-23T00:00:00Z"));
    }

    LedgerPlace place(Path folder) {
        return new LedgerPlace.InFile(folder.resolve("paperbark.db"));
    }

    private void enter(BatchEntry batch) {
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(ledger, batch);
        }
    }

    private List<ClaimState> claims() {
        try (Ledger ledger = Ledger.open(place)) {
            ledger.verify();
            return ledger.claims(LocalDate.of(2027, 6, 30));
        }
    }

    /** Changes the ledger behind the program's back. */
    void change(String statement) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + place);
                Statement run = connection.createStatement()) {
            run.execute(statement);
        } catch (SQLException e) {
            throw new IllegalStateException(statement, e);
        }
    }

    @Test
    void whatWasTakenInIsFoundAgain() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        ClaimState claim = claims().get(0);
        assertThat(claim.reference()).isEqualTo("SB-1-STC");
        assertThat(claim.expected()).isEqualTo(Money.of("504.00"));
        assertThat(claim.outstanding()).isEqualTo(Money.of("504.00"));
        assertThat(claim.due()).contains(LocalDate.of(2026, 11, 30));
        assertThat(claim.batch()).isEqualTo("one");
    }

    @Test
    void aClaimThatSaysTheSameStaysAndOneThatDiffersTakesItsPlace() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        enter(
                Entries.batch(
                        "two",
                        Entries.job("sb-1", Entries.claim(SchemeName.STC, "T 100", "504.00"))));
        assertThat(claims()).extracting(ClaimState::batch).containsExactly("one");
        enter(
                Entries.batch(
                        "three",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-101", "504.00"))));
        assertThat(claims()).extracting(ClaimState::batch).containsExactly("three");
    }

    @Test
    void aSerialIsClaimedForOneJobOnlyUnlessTheOtherOneCorrectsIt() {
        JobEntry second = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        assertThatThrownBy(() -> enter(Entries.batch("two", second)))
                .isInstanceOf(LedgerBusyException.class)
                .hasMessageContaining("job SB-1");
        assertThat(claims()).extracting(ClaimState::job).containsExactly("SB-1");
        enter(Entries.batch("two", Entries.correcting("SB-1", second)));
        assertThat(claims()).extracting(ClaimState::job).containsExactly("SB-2");
    }

    @Test
    void aNameThatWasTakenMeanwhileIsToBeTriedAgain() {
        enter(Entries.batch("week", Entries.job("SB-1")));
        assertThatThrownBy(() -> enter(Entries.batch("week", Entries.job("SB-2"))))
                .isInstanceOf(LedgerBusyException.class)
                .hasMessageContaining("week");
    }

    @Test
    void oneThatTakesOverKnowsWhatIsStillToBePublishedAndWhere() {
        enter(Entries.batch("one", Entries.job("SB-1")));
        enter(Entries.batch("two", Entries.job("SB-2")));
        LedgerPlace second = new LedgerPlace.InFile(folder.resolve("second.db"));
        try (Ledger ledger = Ledger.open(place)) {
            ledger.batches().notePublished("one");
            ledger.takenOverBy(second);
        }
        try (Ledger ledger = Ledger.open(second)) {
            assertThat(ledger.batches().unpublished("here"))
                    .extracting(Batches.Unpublished::name)
                    .containsExactly("two");
            assertThat(ledger.batches().unpublished("elsewhere")).isEmpty();
            assertThat(ledger.batches().unfiled("here"))
                    .extracting(Batches.BatchState::name)
                    .containsExactly("one");
        }
    }

    @Test
    void aBatchThatFailsHalfWayLeavesNothing() {
        JobEntry good = Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        JobEntry clash = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        assertThatThrownBy(() -> enter(Entries.batch("one", good, clash)))
                .isInstanceOf(LedgerBusyException.class);
        assertThat(claims()).isEmpty();
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.batches().unpublished("here")).isEmpty();
        }
    }

    @Test
    void ofTwoThatClaimAtOnceOneIsToldToBeginAgain() throws Exception {
        BatchEntry mine =
                Entries.batch(
                        "mine",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00")));
        BatchEntry theirs =
                Entries.batch(
                        "theirs",
                        Entries.job("SB-9", Entries.claim(SchemeName.STC, "T-100", "504.00")));
        CountDownLatch rehearsed = new CountDownLatch(2);
        ExecutorService offices = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> said =
                    Stream.of(mine, theirs)
                            .map(b -> offices.submit(() -> take(b, rehearsed)))
                            .toList();
            assertThat(List.of(said.get(0).get(), said.get(1).get()))
                    .filteredOn(s -> !s.isEmpty())
                    .singleElement()
                    .asString()
                    .containsAnyOf("Another program wrote", "was claimed meanwhile");
        } finally {
            offices.shutdownNow();
        }
        assertThat(claims()).hasSize(1);
    }

    private String take(BatchEntry batch, CountDownLatch rehearsed) throws InterruptedException {
        try (Ledger ledger = Ledger.open(place)) {
            EntryRecord adds = ledger.rehearse(batch);
            rehearsed.countDown();
            rehearsed.await();
            ledger.enter(batch, adds);
            return "";
        } catch (LedgerBusyException e) {
            return e.getMessage();
        }
    }

    /** Every column of every table, so that none can be added and left out of the seals. */
    @Test
    void aChangeOfAnySingleValueIsNoticed() throws IOException, SQLException {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        enter(
                Entries.batch(
                        "two",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-101", "504.00"))));
        try (Ledger ledger = Ledger.open(place)) {
            ledger.settle(
                    Entries.advice("33"),
                    book -> {
                        AdviceLine line =
                                new AdviceLine(
                                        "key", 2, Entries.DAY, Money.of("504.00"), "SB-1-STC");
                        ClaimState claim = book.byReference("sb-1-stc").get(0);
                        return book.match(
                                book.enter(line),
                                line,
                                claim,
                                AdviceStatus.PAID,
                                line.amount(),
                                "reference",
                                "",
                                "K1");
                    });
        }
        enter(Entries.batch("three", Entries.job("SB-9")));
        try (Ledger ledger = Ledger.open(place)) {
            ledger.forget("sb-9", Entries.DAY, Instant.EPOCH, "test");
            ledger.withdraw(withdrawal("SB-9"));
            new ScanBook(ledger).enter(Entries.scan("44", Entries.page(1, "SB-1", 2, 1, 0)));
            ledger.verify();
        }
        keep();
        Set<String> mutable =
                Set.of(
                        "progress.state",
                        "progress.place",
                        "progress.staged",
                        "office.schema_version");
        List<String> unnoticed = new ArrayList<>();
        int tried = 0;
        for (String column : columns()) {
            String table = column.substring(0, column.indexOf('.'));
            String name = column.substring(column.indexOf('.') + 1);
            if (mutable.contains(column)) {
                continue;
            }
            bringBack(table);
            changeUnchecked(table, name);
            tried++;
            try (Ledger ledger = Ledger.open(place)) {
                ledger.verify();
                unnoticed.add(column);
            } catch (LedgerException noticed) {
                assertThat(noticed).hasMessageMatching("(?s).*(not as it was written|damaged).*");
            }
        }
        assertThat(unnoticed).isEmpty();
        assertThat(tried).isGreaterThan(50);
    }

    private static WithdrawalEntry withdrawal(String job) {
        return new WithdrawalEntry(
                List.of(new WithdrawalEntry.Line(job, "called off")),
                "",
                "",
                Entries.DAY,
                Instant.EPOCH,
                "test");
    }

    @Test
    void aJobThatIsWithdrawnIsNotOwedNorSoldAndItsSerialIsFree() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.withdraw(withdrawal("sb-1"))).isTrue();
            assertThat(ledger.claims(Entries.DAY)).isEmpty();
            assertThat(ledger.income().sales(Entries.DAY)).isEmpty();
            assertThat(ledger.claimsOf("SB-1")).singleElement().matches(c -> !c.active());
            ledger.verify();
        }
        enter(
                Entries.batch(
                        "two",
                        Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.claims(Entries.DAY))
                    .singleElement()
                    .matches(c -> c.job().equals("SB-2"));
        }
    }

    @Test
    void aJobIsWithdrawnOnceAndComesBackWithItsNextClaim() {
        BatchEntry claimed =
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00")));
        enter(claimed);
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.withdraw(withdrawal("SB-1"))).isTrue();
            assertThat(ledger.withdraw(withdrawal("SB-1"))).isFalse();
            assertThat(ledger.withdraw(withdrawal("SB-404"))).isFalse();
            assertThat(ledger.records().all()).hasSize(2);
        }
        enter(Entries.batch("two", claimed.jobs().get(0)));
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.claims(Entries.DAY)).hasSize(1);
            assertThat(ledger.income().sales(Entries.DAY)).hasSize(1);
            assertThat(ledger.withdraw(withdrawal("SB-1"))).isTrue();
            assertThat(ledger.claims(Entries.DAY)).isEmpty();
            Path anew = folder.resolve("anew.db");
            Ledger.rebuild(new LedgerPlace.InFile(anew), ledger.id(), ledger.records().all());
            try (Ledger rebuilt = Ledger.open(anew)) {
                assertThat(rebuilt.claimsOf("SB-1")).isEqualTo(ledger.claimsOf("SB-1"));
                assertThat(rebuilt.income().sales(Entries.DAY)).isEmpty();
            }
        }
    }

    @Test
    void aListOfTheSameNameThatLostAJobIsALaterVersionAndNextWeeksListIsNone() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00")),
                        Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-101", "504.00")),
                        Entries.job("SB-3", Entries.claim(SchemeName.STC, "T-102", "504.00"))));
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.gone("WEEK.xlsx", List.of("SB-1", "sb-3", "SB-9")))
                    .containsExactly(new GoneJobs("one", List.of("SB-2")));
            assertThat(ledger.gone("week.xlsx", List.of("SB-3", "SB-8", "SB-9"))).isEmpty();
            assertThat(ledger.gone("other.xlsx", List.of("SB-1", "SB-3"))).isEmpty();
        }
    }

    /** Every column as {@code table.column}. */
    List<String> columns() throws SQLException {
        List<String> columns = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + place);
                Statement run = connection.createStatement();
                var rows =
                        run.executeQuery(
                                "SELECT t.name || '.' || c.name FROM sqlite_master t, pragma_table_info(t.name) c"
                                        + " WHERE t.type = 'table'")) {
            while (rows.next()) {
                columns.add(rows.getString(1));
            }
        }
        return columns;
    }

    /** Keeps the ledger as it is now. */
    void keep() throws IOException {
        sound = Files.readAllBytes(file());
    }

    /** Brings the table back as it was. */
    void bringBack(String table) throws IOException {
        Files.write(file(), sound);
    }

    private Path file() {
        return Path.of(place.toString());
    }

    /** Changes the newest row without regard to keys and checks, as whoever does so unseen. */
    void changeUnchecked(String table, String column) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + place);
                Statement run = connection.createStatement()) {
            run.execute("PRAGMA ignore_check_constraints = ON");
            run.execute(
                    "UPDATE %1$s SET %2$s = CASE typeof(%2$s) WHEN 'integer' THEN %2$s + 7 ELSE %2$s || 'x' END"
                                    .formatted(table, column)
                            + " WHERE rowid = (SELECT max(rowid) FROM %s)".formatted(table));
        }
    }

    @Test
    void aRowTakenAwayOrAnEntryLeftOutIsNoticed() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        enter(
                Entries.batch(
                        "two",
                        Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "504.00"))));
        change("DELETE FROM sale WHERE job_key = 'SB-2'");
        assertThatThrownBy(this::claims)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("\"two\"");
    }
}
