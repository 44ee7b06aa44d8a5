package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.settle.Owing;
import paperbark.value.Money;

/** A claim that failed is mended in the register, and claimed anew. */
class FailedClaimTest {
    private static final String SERIAL = "2610040004512101";
    private static final String MENDED = "2610040004512199";
    private static final String FAILED = "failed on 25 Nov 2026, serial not on the photograph";

    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void aClaimIsLodgedAndFails() throws IOException {
        office = Offices.make(folder.resolve("office"));
        drop("2026-11-23", "a", Offices.register(1));
        run("2026-11-24", "lodged", "J-1");
        Files.writeString(
                office.root().resolve("advice.csv"),
                "Claim,Status,Reason,Date\nJ-1-STC,failed,serial not on the photograph,25/11/2026\n");
        run("2026-11-25", "settle", "advice.csv");
        assertThat(owed("2026-11-25")).isEqualTo(Money.ZERO);
    }

    private Program.Run run(String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), office.root(), words);
    }

    private void drop(String day, String name, String rows) throws IOException {
        Files.writeString(office.intake().resolve(name + ".csv"), rows);
        Program.Run watch = run(day, "watch", ".", "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).as(watch.out() + watch.err()).isIn(0, 10);
    }

    private String index(String day, String name) throws IOException {
        return Files.readString(office.packs().resolve(day + "-" + name).resolve("index.html"));
    }

    private String pack(String day, String name) throws IOException {
        return Drafts.pdf(
                        Files.readAllBytes(
                                office.packs().resolve(day + "-" + name + "/packs/J-1.pdf")))
                .replaceAll("\\s+", " ");
    }

    private Money owed(String day) {
        return Owing.of(office.ledger(), LocalDate.parse(day)).total().values().stream()
                .reduce(Money.ZERO, Money::plus);
    }

    private List<ClaimState> standing(String day) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger.claims(LocalDate.parse(day));
        }
    }

    /** It is to be lodged like any other: no list has it as failed, and money is expected of it. */
    private void assertClaimedAnew(String day, String batch) throws IOException {
        assertThat(standing(day))
                .singleElement()
                .matches(claim -> claim.batch().equals(day + "-" + batch))
                .matches(claim -> claim.isToLodge(LocalDate.parse(day)))
                .matches(claim -> claim.failed().isEmpty());
        assertThat(owed(day)).isEqualTo(Money.of("505.80"));
        assertThat(index(day, batch)).doesNotContain("is with the buyer");
        assertThat(pack(day, batch)).contains("J-1-STC for 14", FAILED).doesNotContain("withdrawn");
        assertThat(Files.readString(office.calendar()))
                .contains("Claim J-1-STC is not known")
                .doesNotContain("withdrawn");
        assertThat(run(day, "lodged", "J-1").out()).contains("Now:", ": lodged, $0.00 received");
    }

    @Test
    void withAnotherSerialItIsStoppedByNothing() throws IOException {
        drop("2026-11-26", "b", Offices.register(1).replace(SERIAL, MENDED));
        assertClaimedAnew("2026-11-26", "b");
    }

    /** The claim says what it said, but the papers name another owner. */
    @Test
    void withTheSameSerialItIsClaimedAnewToo() throws IOException {
        drop("2026-11-26", "b", Offices.register(1).replace("Ada Amberwood", "Ada May Amberwood"));
        assertClaimedAnew("2026-11-26", "b");
    }

    /** Nobody withdrew it: what was held is mended, and its papers tell that it failed. */
    @Test
    void whereTheNewRegisterIsHeldItFallsAwayAndIsToldAsFailedStill() throws IOException {
        drop("2026-11-26", "b", Offices.register(1).replace("D270-A", "D999"));
        assertThat(standing("2026-11-26")).isEmpty();
        assertThat(run("2026-11-26", "lodged", "J-1-STC").err())
                .contains("Job J-1 is held, and nothing is claimed for it")
                .doesNotContain("withdrawn");
        drop("2026-11-27", "c", Offices.register(1).replace(SERIAL, MENDED));
        assertClaimedAnew("2026-11-27", "c");
    }

    /** Nothing is to be agreed on with a buyer who has it no longer. */
    @Test
    void whatIsOnlyBookedAgainIsAgreedOnWithNobody() throws IOException {
        drop("2026-11-26", "b", Offices.register(1).replace("J-1,installed", "J-1,booked"));
        assertThat(standing("2026-11-26")).isEmpty();
        assertThat(index("2026-11-26", "b")).doesNotContain("agree with", "falls away");
    }

    /** The buyer has it once more, and a change is agreed on with them. */
    @Test
    void whatWasLodgedAgainIsWithTheBuyer() throws IOException {
        run("2026-11-26", "lodged", "J-1");
        drop("2026-11-27", "b", Offices.register(1).replace(SERIAL, MENDED));
        assertThat(index("2026-11-27", "b")).contains("The claim J-1-STC is with the buyer");
        assertThat(standing("2026-11-27")).singleElement().matches(ClaimState::isWithBuyer);
    }
}
