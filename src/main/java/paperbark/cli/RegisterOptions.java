package paperbark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.batch.Request;
import paperbark.value.Days;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The words that say which register is meant and what goes with it. */
final class RegisterOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Parameters(
            index = "0",
            paramLabel = "REGISTER",
            description = "The list of jobs: .xlsx, .xls or .csv.")
    private Path register;

    @Option(
            names = "--sheet",
            paramLabel = "NAME",
            description = "The sheet to read; otherwise the one whose headings match best.")
    private Optional<String> sheet = Optional.empty();

    @Option(
            names = "--tables",
            paramLabel = "PATH",
            description =
                    "Folder or workbook of the firm's tables; otherwise the folder \"tables\" beside the register.")
    private Optional<Path> tables = Optional.empty();

    @Option(
            names = "--templates",
            paramLabel = "FOLDER",
            description =
                    "Folder of the firm's own templates; otherwise \"templates\" beside the register, or the shipped ones.")
    private Optional<Path> templates = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            description =
                    "Where the result appears; otherwise \"packs\" beside the register, and beside the register itself when checking.")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = DayConverter.class,
            description = "The day of the run, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    @Option(names = "--json", description = "Print the outcome and its findings as JSON.")
    private boolean json;

    @Option(
            names = "--explain",
            description = "Say why each finding matters, and list all of them.")
    private boolean explain;

    boolean json() {
        return json;
    }

    boolean explain() {
        return explain;
    }

    /** The request, with relative paths taken from the working directory. */
    Request request(Main.World world, String defaultOut, boolean siteSheets) {
        Path file = world.directory().resolve(register).normalize();
        Path beside = file.getParent();
        Path tablesPath =
                tables.map(world.directory()::resolve).orElse(beside.resolve("tables")).normalize();
        Path ownTemplates = beside.resolve("templates");
        return new Request(
                file,
                sheet,
                tablesPath,
                templates.map(folder -> named(world, folder)).or(() -> existing(ownTemplates)),
                existing(rules(tablesPath)),
                out.map(world.directory()::resolve).orElse(beside.resolve(defaultOut)).normalize(),
                asOf.orElseGet(() -> LocalDate.now(world.clock())),
                siteSheets,
                Version.text());
    }

    /** In the folder of tables, or beside the workbook of tables. */
    private static Path rules(Path tables) {
        return Files.isRegularFile(tables)
                ? tables.resolveSibling("rules")
                : tables.resolve("rules");
    }

    private Path named(Main.World world, Path folder) {
        Path resolved = world.directory().resolve(folder);
        if (!Files.isDirectory(resolved)) {
            throw new ParameterException(
                    spec.commandLine(), "There is no folder " + resolved + " for --templates.");
        }
        return resolved;
    }

    private static Optional<Path> existing(Path folder) {
        return Files.isDirectory(folder) ? Optional.of(folder) : Optional.empty();
    }

    /** Reads a day as registers do. */
    static final class DayConverter implements ITypeConverter<LocalDate> {
        @Override
        public LocalDate convert(String text) {
            return Days.parse(text)
                    .toOptional()
                    .orElseThrow(
                            () ->
                                    new TypeConversionException(
                                            "\""
                                                    + text
                                                    + "\" is no day; type it like 2026-11-23."));
        }
    }
}
