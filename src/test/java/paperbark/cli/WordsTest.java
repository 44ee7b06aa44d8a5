package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of wrong words, and commands that are there to be pasted. */
class WordsTest {
    @TempDir private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "check nowhere.csv",
                "check a-file/week.csv",
                "prepare a-file --out a-file",
                "watch a-file",
                "watch nowhere",
                "doctor nowhere",
                "form-fields nowhere.pdf",
                "form-fields .",
                "preview stc --out a-file/stc.pdf",
                "preview stc --register nowhere.csv",
                "preview stc --templates nowhere",
                "settle nowhere.csv",
                "forget SB-1 --office nowhere",
                "setup a-file"
            })
    void aWrongPathIsToldInSentences(String words) throws IOException {
        Files.createFile(folder.resolve("a-file"));
        Program.Run run = Program.run(folder, words.split(" "));
        assertThat(run.exitCode()).isNotIn(0, 1);
        assertThat(run.out() + run.err())
                .isNotBlank()
                .doesNotContain("Exception", "java.nio", "folder: . ", "a-file. Look");
    }

    @Test
    void aFileThatIsNotThereIsAllThatIsSaidOfIt() throws IOException {
        Files.createFile(folder.resolve("week-48.xlsx"));
        Program.Run run = Program.run(folder, "check", "week-84.xlsx");
        assertThat(run.exitCode()).isEqualTo(11);
        assertThat(run.out())
                .contains(
                        "There is no file of this name.", "Type \"week-48.xlsx\" if that is meant")
                .contains("Findings:     1 stop, 0 check, 0 note")
                .doesNotContain("table");
        assertThat(Program.run(folder, "check", "weeks/week-48.xlsx").out())
                .contains("There is no folder " + folder.resolve("weeks") + "; check its name.");
    }

    @Test
    void anOfficeThatIsNotThereIsNamedFirst() {
        Program.Run run = Program.run(folder, "watch", "nowhere");
        assertThat(run.exitCode()).isEqualTo(22);
        assertThat(run.err()).startsWith("Not found: " + folder.resolve("nowhere"));
    }

    @Test
    void wordsThatAreNotUnderstoodDoNotDrownInTheUsage() {
        Program.Run run = Program.run(folder, "check", "week.csv", "--as-of", "sometime");
        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err().lines()).hasSize(2);
        assertThat(run.err()).contains("\"sometime\" is no day", "check --help");
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "week.csv, week.csv",
                "my week.csv, 'my week.csv'",
                "O'Brien & Co.csv, 'O'\\''Brien & Co.csv'",
                "B\u00fcro.csv, B\u00fcro.csv",
                "$HOME, '$HOME'"
            })
    void wordsAreQuotedAsAShellTakesThem(String word, String quoted) {
        assertThat(Started.quoted(word)).isEqualTo(quoted);
    }

    @Test
    void whatSetupProposesCanBePasted() {
        Program.Run run = Program.run(folder, "setup", "my office");
        assertThat(run.out())
                .contains("prepare '" + folder.resolve("my office/sample-register.xlsx") + "'");
    }

    @Test
    void aRefusedRegisterGetsItsMarkedCopyFromCheck() throws IOException {
        Program.run(folder, "setup", "office");
        Path register =
                Files.writeString(
                        folder.resolve("office/week.csv"), "Job,Owner\nSB-1,Ada Amberwood\n");
        Program.Run run = Program.run(folder, "check", register.toString());
        assertThat(run.exitCode()).isEqualTo(11);
        assertThat(folder.resolve("office/week-checked.xlsx")).isRegularFile();
        assertThat(run.out()).contains("Result:");
    }

    @Test
    void noCopyIsPromisedWhereNoneCanBeMade() throws IOException {
        Program.run(folder, "setup", "office");
        Path register = Files.writeString(folder.resolve("office/week.xlsx"), "no workbook");
        Program.Run run = Program.run(folder, "check", register.toString());
        assertThat(run.exitCode()).isEqualTo(11);
        assertThat(run.out()).doesNotContain("marked-up", "Result:");
        assertThat(folder.resolve("office/week-checked.xlsx")).doesNotExist();
    }
}
