package paperbark.cli;

import java.util.List;
import java.util.Optional;
import paperbark.value.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;

/**
 * Says which word of the command line was not understood, and which was probably meant. The whole
 * usage would push the one sentence that matters off the screen.
 */
final class Misunderstood implements IParameterExceptionHandler {
    private final Main.World world;

    Misunderstood(Main.World world) {
        this.world = world;
    }

    @Override
    public int handleParseException(ParameterException wrong, String[] words) {
        CommandLine line = wrong.getCommandLine();
        // A word that is not known is told of before one that is lacking: it may be the same.
        world.err()
                .println(
                        line.getUnmatchedArguments().stream()
                                .findFirst()
                                .map(word -> unknown(line, word))
                                .orElseGet(wrong::getMessage));
        world.err().println("All words are explained by: " + help(line));
        return CommandLine.ExitCode.USAGE;
    }

    private static String unknown(CommandLine line, String word) {
        if (word.startsWith("-")) {
            String option = word.replaceFirst("=.*", "");
            return told("There is no option \"" + option + "\".", option, options(line), "");
        }
        List<String> commands = List.copyOf(line.getSubcommands().keySet());
        return commands.isEmpty()
                ? "\"" + word + "\" is a word too many; quote a name that has a space in it."
                : told(
                        "There is no command \"" + word + "\".",
                        word,
                        commands,
                        " The commands are " + String.join(", ", commands) + ".");
    }

    private static String told(String fact, String word, List<String> known, String otherwise) {
        Optional<String> nearest = Nearest.to(word, known);
        return fact + nearest.map(near -> " Did you mean \"" + near + "\"?").orElse(otherwise);
    }

    private static List<String> options(CommandLine line) {
        return line.getCommandSpec().options().stream().map(o -> o.longestName()).toList();
    }

    private static String help(CommandLine line) {
        String command = line.getCommandSpec().name();
        return command.equals("paperbark")
                ? Started.with("--help")
                : Started.with(command, "--help");
    }
}
