package paperbark.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The words that say which sheet of a list is read, and where the firm's tables are. */
final class ListOptions {
    @Option(
            names = "--sheet",
            paramLabel = "NAME",
            description = "The sheet to read; otherwise the one whose headings match best.")
    private Optional<String> sheet = Optional.empty();

    @Option(
            names = "--tables",
            paramLabel = "PATH",
            description =
                    "Folder or workbook of the firm's tables; otherwise the folder \"tables\" beside the list.")
    private Optional<Path> tables = Optional.empty();

    Optional<String> sheet() {
        return sheet;
    }

    /**
     * The firm's tables.
     *
     * @param beside the folder that they are in where nobody names them
     */
    Path tables(Main.World world, Path beside) {
        return tables.map(world.directory()::resolve).orElse(beside.resolve("tables")).normalize();
    }
}
