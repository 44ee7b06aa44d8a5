package paperbark.cli;

import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.answer.FindingMeaning;
import paperbark.batch.Ending;
import paperbark.finding.FindingCode;
import paperbark.value.Nearest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code explain-finding}: what a finding means, for whoever reads its name for the first time. */
@Command(
        name = "explain-finding",
        description =
                "Says what a finding means, why it matters, what to do, an example, and the source of the rule behind it.",
        footer = {"", "Example:", "  paperbark explain-finding serial-twice"},
        mixinStandardHelpOptions = true)
final class ExplainFindingCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(
            paramLabel = "FINDING",
            completionCandidates = Names.class,
            description = "The finding's name, as it stands in brackets behind its place.")
    private String name;

    ExplainFindingCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        Optional<FindingCode> code = FindingCode.of(name);
        if (code.isEmpty()) {
            world.err().println("There is no finding \"" + name + "\".");
            world.err()
                    .println(
                            Nearest.to(name, Names.all())
                                    .map(near -> "Did you mean \"" + near + "\"?")
                                    .orElse(
                                            "The findings are "
                                                    + String.join(", ", Names.all())
                                                    + "."));
            return Ending.USAGE.exitCode();
        }
        tell(FindingMeaning.of(code.get()));
        return Ending.DONE.exitCode();
    }

    private void tell(FindingMeaning meaning) {
        world.out().println(meaning.code().code());
        part("What", List.of(meaning.severity()));
        part("Why", List.of(meaning.code().why()));
        part("Do, for instance", meaning.remedies());
        for (List<String> example : meaning.examples()) {
            part("Example", example);
        }
        part("Source", meaning.sources());
    }

    private void part(String heading, List<String> lines) {
        world.out().println();
        world.out().println(heading);
        lines.forEach(line -> world.out().println("  " + line));
    }

    /** The names of all findings. */
    static final class Names implements Iterable<String> {
        static List<String> all() {
            return Arrays.stream(FindingCode.values()).map(FindingCode::code).toList();
        }

        @Override
        public Iterator<String> iterator() {
            return all().iterator();
        }
    }
}
