package paperbark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.answer.FormDesk;
import paperbark.batch.Ending;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code form-grid}: a ruled copy of a form without fields. */
@Command(
        name = "form-grid",
        description =
                "Writes a copy of a PDF form ruled in millimetres from the top left, to read places from.",
        footer = {"", "Example:", "  paperbark form-grid buyer.pdf --out buyer-grid.pdf"},
        mixinStandardHelpOptions = true)
final class FormGridCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(paramLabel = "FORM", description = "The form: a PDF.")
    private Path form;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            required = true,
            description = "The ruled copy; a file of that name is replaced.")
    private Path out;

    FormGridCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path copy = world.directory().resolve(out).normalize();
        Path original = world.directory().resolve(form).normalize();
        if (copy.equals(original)) {
            world.err().println("The copy must not take the place of the form.");
            return Ending.SETUP.exitCode();
        }
        if (Refusal.told(world, FormDesk.grid(original, copy))) {
            return Ending.SETUP.exitCode();
        }
        world.out().println("Result: " + copy);
        return Ending.DONE.exitCode();
    }
}
