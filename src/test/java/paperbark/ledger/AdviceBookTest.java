package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** By what the claim is found that a line of an advice is for, and which lines came before. */
class AdviceBookTest {
    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void aLedgerWithTwoClaimsOfTheSameMoney() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        ClaimEntry first = Entries.claim(SchemeName.STC, "T-100", "504.00");
        ClaimEntry second = Entries.claim(SchemeName.VEEC, "T-200", "504.00");
        Entries.enter(
                ledger,
                Entries.batch("one", Entries.job("T-1", first), Entries.job("T-2", second)));
    }

    @AfterEach
    void close() {
        ledger.verify();
        ledger.close();
    }

    private <T> T settle(Function<AdviceBook, T> work) {
        return ledger.settle(Entries.advice("33"), work);
    }

    private List<String> found(Function<AdviceBook, List<ClaimState>> question) {
        return settle(book -> question.apply(book).stream().map(ClaimState::reference).toList());
    }

    private OptionalLong known(String key) {
        return settle(book -> book.known(key));
    }

    private OptionalLong unmatched(AdviceLine line) {
        return settle(book -> book.unmatched(line));
    }

    private static AdviceLine line(String key, String amount, String reference) {
        return new AdviceLine(key, 2, Entries.DAY, Money.of(amount), reference);
    }

    private static Serial serial(String text) {
        return Serial.parse(text).toOptional().orElseThrow();
    }

    /** A payment for the claim of T-1, which the buyer calls K-77. */
    private void paid(String amount) {
        settle(
                book -> {
                    AdviceLine said = line("paid " + amount, amount, "K-77");
                    ClaimState claim = book.byJob("T-1").get(0);
                    return book.match(
                            book.enter(said),
                            said,
                            claim,
                            AdviceStatus.PAID,
                            said.amount(),
                            "job",
                            "",
                            "K-77");
                });
    }

    @Test
    void aClaimIsFoundByItsNameByTheBuyersByJobAndByAnyOfItsSerials() {
        paid("10.00");
        assertThat(found(book -> book.byReference("t-1-stc"))).containsExactly("T-1-STC");
        assertThat(found(book -> book.byReference("K-77"))).containsExactly("T-1-STC");
        assertThat(found(book -> book.byReference("K-78"))).isEmpty();
        assertThat(found(book -> book.byReference(""))).isEmpty();
        assertThat(found(book -> book.byJob("t-2"))).containsExactly("T-2-VEEC");
        assertThat(found(book -> book.bySerial(serial("T 200")))).containsExactly("T-2-VEEC");
        assertThat(found(book -> book.bySerial(serial("T-300")))).isEmpty();
    }

    @Test
    void byItsMoneyAClaimIsFoundWhileAllOfItIsStillToCome() {
        Money all = Money.of("504.00");
        assertThat(found(book -> book.owing(all))).containsExactly("T-1-STC", "T-2-VEEC");
        assertThat(found(book -> book.owing(Money.of("503.99")))).isEmpty();
        paid("10.00");
        assertThat(found(book -> book.owing(all))).containsExactly("T-2-VEEC");
    }

    @Test
    void aLineIsKnownByItsKeyAndByWhatItIsMatchedTo() {
        paid("504.00");
        assertThat(known("paid 504.00")).hasValue(1);
        assertThat(known("paid 504.01")).isEmpty();
        assertThat(found(book -> book.matchedTo(1))).containsExactly("T-1-STC");
        assertThat(found(book -> book.matchedTo(2))).isEmpty();
    }

    @Test
    void aLineOfAnEarlierAdviceThatWasMatchedToNothingIsFoundAgain() {
        paid("504.00");
        long open = settle(book -> book.enter(line("open", "20.00", "K-90")));
        assertThat(open).isEqualTo(2);
        AdviceLine again = line("again", "20.00", "K-90");
        assertThat(unmatched(again)).hasValue(2);
        assertThat(unmatched(line("again", "20.01", "K-90"))).isEmpty();
        assertThat(unmatched(line("again", "20.00", "K-91"))).isEmpty();
        assertThat(unmatched(line("again", "504.00", "K-77"))).isEmpty();
    }

    @Test
    void aLineWithoutReferenceOrOfTheSameAdviceIsNotAnEarlierOne() {
        settle(book -> book.enter(line("nameless", "20.00", "")));
        assertThat(unmatched(line("again", "20.00", ""))).isEmpty();
        OptionalLong second =
                settle(
                        book -> {
                            book.enter(line("first", "30.00", "K-90"));
                            return book.unmatched(line("second", "30.00", "K-90"));
                        });
        assertThat(second).isEmpty();
    }

    @Test
    void anAdviceHasANameOnceItBroughtSomethingNew() {
        String before = settle(book -> book.name().orElse("none"));
        assertThat(before).isEqualTo("none");
        assertThat(ledger.records().newestNumber()).isOne();
        String after =
                settle(
                        book -> {
                            book.enter(line("a", "1.00", ""));
                            book.enter(line("b", "2.00", ""));
                            return book.name().orElse("none");
                        });
        assertThat(after).isEqualTo("advice-2");
        assertThat(ledger.records().newestNumber()).isEqualTo(2);
    }
}
