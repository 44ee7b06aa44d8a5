package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNoException;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.finding.Concern;
import paperbark.finding.FindingCode;
import paperbark.outside.Outside;
import paperbark.value.SchemeName;

/** What the program says of itself: the help of commands, the meaning of findings, completion. */
class HelpTest {
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir private Path folder;

    static Stream<Map.Entry<String, String>> helps() {
        return Usages.all().entrySet().stream();
    }

    @Test
    void theListOfCommandsTellsWhatTheCommandsTell() {
        String all = Program.line(folder).getUsageMessage();

        assertThat(Program.run(folder, "--help").out()).isEqualTo(all);
        assertThat(Program.run(folder, "-h").out()).isEqualTo(all);
        assertThat(Program.run(folder).err()).isEqualTo(all);
    }

    @ParameterizedTest
    @MethodSource("helps")
    void everyCommandHasAnExampleThatItUnderstands(Map.Entry<String, String> help) {
        List<String> examples =
                help.getValue()
                        .lines()
                        .dropWhile(line -> !line.matches("Examples?:"))
                        .skip(1)
                        .toList();

        assertThat(examples)
                .as("the footer of %s has \"Example:\" and a line below it", help.getKey())
                .isNotEmpty()
                .allSatisfy(e -> assertThat(e).startsWith("  paperbark " + help.getKey()));
        for (String example : examples) {
            String[] words =
                    WORD.matcher(example.replaceFirst(" >.*", ""))
                            .results()
                            .map(m -> m.group(1) == null ? m.group(2) : m.group(1))
                            .skip(1)
                            .toArray(String[]::new);
            assertThatNoException()
                    .as(example)
                    .isThrownBy(() -> Program.line(folder).parseArgs(words));
        }
    }

    @Test
    void aCommandThatIsAskedForIsTheOnlyOneThatIsMade() {
        assertThat(Usages.all().keySet())
                .allSatisfy(
                        name ->
                                assertThat(Program.line(folder, name).getSubcommands())
                                        .containsOnlyKeys(name))
                .hasSameSizeAs(Commands.asked("chek"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "chek week.csv | There is no command \"chek\". Did you mean \"check\"?",
                "check week.csv --as-off 2026-01-01 | There is no option \"--as-off\". Did you mean \"--as-of\"?",
                "check --tabels=x | There is no option \"--tabels\". Did you mean \"--tables\"?",
                "owed --zebra | There is no option \"--zebra\".",
                "owed SB-1 | \"SB-1\" is a word too many; quote a name that has a space in it.",
                "explain-finding serial-twise | There is no finding \"serial-twise\"."
            })
    void aWordThatIsNotKnownIsToldWithTheNearest(String words, String said) {
        Program.Run run = Program.run(folder, words.split(" "));

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(2).first().isEqualTo(said);
    }

    @Test
    void aCommandThatIsLikeNoneIsToldWithAll() {
        assertThat(Program.run(folder, "zebra").err())
                .contains("There is no command \"zebra\". The commands are setup, ");
    }

    @ParameterizedTest
    @EnumSource(FindingCode.class)
    void everyFindingIsExplained(FindingCode code) {
        Program.Run run = Program.run(folder, "explain-finding", code.code());

        assertThat(run.exitCode()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .startsWith(code.code())
                .contains(code.why(), "[" + code.code() + "]")
                .containsSubsequence(
                        "\nWhat\n", "\nWhy\n", "\nDo, for instance\n", "\nExample\n", "\nSource\n");
    }

    /** What holds the claim under one scheme alone is a rule of that scheme. */
    @ParameterizedTest
    @EnumSource(FindingCode.class)
    void aRuleOfASchemeNamesItsSource(FindingCode code) {
        boolean ofAScheme =
                Arrays.stream(SchemeName.values())
                        .anyMatch(s -> code.holds().equals(Set.of(Concern.claim(s))));
        String said = Program.run(folder, "explain-finding", code.code()).out();

        assertThat(said.contains("no source") && ofAScheme).as(said).isFalse();
    }

    @Test
    void aStopSaysWhatItHoldsAndTheLawItRestsOn() {
        assertThat(Program.run(folder, "explain-finding", "CLAIM-CLOSED").out())
                .contains(
                        "A stop: of the papers for STC, VEEC those that hang on it are held until it is mended.",
                        "The last day for creating STCs was 19 Nov 2026.",
                        "Renewable Energy (Electricity) Act 2000 (in force), Commonwealth of Australia, s 21(2)",
                        "Victorian Energy Efficiency Target Act 2007 (023), State of Victoria, s 17(2)");
    }

    /** The judge is bash itself. */
    @Tag("outside")
    @ParameterizedTest
    @CsvSource({
        "paperbark expl, explain explain-finding",
        "paperbark explain-finding serial-tw, serial-twice",
        "paperbark owed --le, --ledger"
    })
    void aShellCompletesWords(String typed, String completed) throws Exception {
        Path script =
                Files.writeString(
                        folder.resolve("completion.sh"), Program.run(folder, "completion").out());
        int last = typed.split(" ").length - 1;
        Outside.Result result =
                Outside.run(
                        folder,
                        "bash",
                        "-c",
                        "source %s; COMP_WORDS=(%s); COMP_CWORD=%d; _complete_paperbark; echo \"${COMPREPLY[*]}\""
                                .formatted(script, typed, last));

        assertThat(result.exitCode()).as(result.err()).isZero();
        assertThat(result.out().strip().split("\\s+"))
                .containsExactlyInAnyOrder(completed.split(" "));
    }
}
