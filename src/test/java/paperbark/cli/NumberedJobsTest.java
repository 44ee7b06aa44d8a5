package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.io.FileUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A list without job numbers from one week to the next, with a ledger. */
class NumberedJobsTest {
    private static final String LIST =
            """
            Installed on,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Tank serial,Plumber,\
            Plumbing certificate,Old heater,Claim STCs,STC benefit,Full price,Co-payment,Benefit form
            16/11/2026,Ada Amberwood,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,2610040004512037,Wanda Wattle,\
            DEMO-VP-26401,none,yes,504.00,4620.00,4116.00,discount
            """;

    @TempDir private Path folder;

    @Test
    void aHeaterThatWasClaimedKeepsItsNumberWhenItsAddressIsCorrected() throws IOException {
        FileUtils.copyDirectory(
                Path.of("input-samples/tables").toFile(), folder.resolve("tables").toFile());
        Files.writeString(folder.resolve("tables/columns.csv"), "field,alias,always\njob,,HW-*\n");
        assertThat(Program.run(folder, "ledger-new").exitCode()).isZero();

        Files.writeString(folder.resolve("week.csv"), LIST);
        Program.Run first = prepare("week.csv");
        assertThat(first.out()).contains("Jobs:         1, held: 0");

        Files.writeString(folder.resolve("mended.csv"), LIST.replace("4 Teaspoon", "14 Teaspoon"));
        Program.Run second = prepare("mended.csv");
        assertThat(second.out())
                .contains("[job-changed]")
                .doesNotContain("serial-claimed-before", "site-claimed-before");
    }

    private Program.Run prepare(String list) {
        Program.Run run =
                Program.run(
                        folder,
                        "prepare",
                        list,
                        "--tables",
                        "tables",
                        "--ledger",
                        "paperbark.db",
                        "--explain");
        assertThat(run.err()).isEmpty();
        return run;
    }
}
