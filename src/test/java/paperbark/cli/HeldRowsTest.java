package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A row that cannot become papers is never passed over with "all done". */
class HeldRowsTest {
    private static final int DONE = 0;
    private static final int HELD = 10;
    private static final String TABLES =
            Path.of("input-samples/tables").toAbsolutePath().toString();
    private static final String HEADINGS =
            "Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Claim STCs\n";
    private static final String SOUND =
            "SB-1,Ann,4 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,yes\n";

    @TempDir private Path folder;

    @Test
    void soundRowsAreDone() throws IOException {
        assertThat(checked(SOUND)).isEqualTo(DONE);
    }

    @Test
    void aRowWithoutAJobNumberCountsAsHeld() throws IOException {
        assertThat(checked(SOUND + ",Bob,5 Teaspoon Lane,Ballan,VIC,3342,Dunlin,D270-A,no\n"))
                .isEqualTo(HELD);
    }

    @Test
    void aRowWithACellTooManyIsHeld() throws IOException {
        assertThat(checked(SOUND.replace("yes", "yes,left over"))).isEqualTo(HELD);
    }

    @Test
    void aClaimThatCannotBeReadIsHeld() throws IOException {
        assertThat(checked(SOUND.replace("yes", "sure"))).isEqualTo(HELD);
    }

    private int checked(String rows) throws IOException {
        Files.writeString(folder.resolve("week.csv"), HEADINGS + rows);
        Program.Run run = Program.run(folder, "check", "week.csv", "--tables", TABLES);
        assertThat(run.err()).isEmpty();
        return run.exitCode();
    }
}
