package paperbark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import paperbark.office.Office;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** The office folder that a command names. A folder that is none stays as it is. */
final class OfficeArgument {
    private OfficeArgument() {}

    /**
     * The office in a folder.
     *
     * @throws ParameterException when the folder is there and no office
     */
    static Office of(Main.World world, Path folder, CommandSpec command) throws IOException {
        Path named = world.directory().resolve(folder).normalize();
        if (Files.isDirectory(named) && !Office.isOffice(named)) {
            throw new ParameterException(
                    command.commandLine(),
                    named + " is no office folder. Name one, or make one with setup.");
        }
        return Office.in(named);
    }
}
