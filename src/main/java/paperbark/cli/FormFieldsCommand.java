package paperbark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.answer.FormDesk;
import paperbark.batch.Ending;
import paperbark.sheet.Reading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code form-fields}: the fields of a buyer's form as a mapping table to start from. */
@Command(
        name = "form-fields",
        description = {
            "Lists the fields of a buyer's PDF form as a mapping table to start from.",
            "Name, kind, pages, whether required, most letters, form of a date, choices."
        },
        footer = {"", "Example:", "  paperbark form-fields templates/forms/buyer.pdf"},
        mixinStandardHelpOptions = true)
final class FormFieldsCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(paramLabel = "FORM", description = "The form: a PDF.")
    private Path form;

    FormFieldsCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Reading<String> table = FormDesk.fields(world.directory().resolve(form));
        table.result().ifPresent(world.out()::print);
        return Refusal.told(world, table.findings())
                ? Ending.SETUP.exitCode()
                : Ending.DONE.exitCode();
    }
}
