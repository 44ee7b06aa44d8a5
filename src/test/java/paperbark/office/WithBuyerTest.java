package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;

/** A lodged claim of 14 STCs whose row says something else than the buyer has. */
class WithBuyerTest {
    @TempDir private Path folder;

    private Office office;

    @BeforeEach
    void oneClaimIsLodged() throws IOException {
        office = Offices.make(folder.resolve("office"));
        prepare("2026-11-23", "a", Offices.register(1));
        run("2026-11-24", "lodged", "J-1");
    }

    private Program.Run run(String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), office.root(), words);
    }

    private Path prepare(String day, String name, String rows) throws IOException {
        String register = name + ".csv";
        Files.writeString(office.root().resolve(register), rows);
        run(day, "prepare", register, "--tables", "tables", "--out", "packs", "--csv");
        return office.packs().resolve(day + "-" + name);
    }

    /** The smaller heater earns 9. */
    @Test
    void theNumberIsTheBuyersWhateverTheHeaterEarnsNow() throws IOException {
        Path batch = prepare("2026-11-25", "b", Offices.register(1).replace("D270-A", "D200-A"));
        assertThat(Files.readString(batch.resolve("summary-csv/certificates.csv")))
                .contains("J-1,Ada Amberwood,STC,Kestrel Certificates,4,,14,due,")
                .contains("STCs for this job: 9")
                .contains("Number that the buyer has: 14");
        assertThat(Files.readString(batch.resolve("summary-csv/expected-claims.csv")))
                .contains("Kestrel Certificates,STC,14,")
                .contains(",505.80,");
    }

    /** Nobody else tells what the discount was. */
    @Test
    void aDiscountThatNoJournalTellsIsToldNowhere() throws IOException {
        Files.delete(office.packs().resolve("2026-11-23-a/journal.csv"));
        Path batch = prepare("2026-11-25", "b", Offices.register(1).replace("504.00", "480.00"));
        assertThat(Files.readString(batch.resolve("summary-csv/gst.csv")))
                .doesNotContain("480.00")
                .doesNotContain("504.00");
        assertThat(Files.readString(batch.resolve("journal.csv")))
                .contains("Nobody said what the STCs take off the price");
    }
}
