package paperbark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.batch.Request;
import paperbark.ledger.LedgerPlace;
import paperbark.office.OfficeFolder;
import paperbark.value.Days;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** The words that say which register is meant and how to read it. */
final class ReadingOptions {

    @Parameters(
            index = "0",
            paramLabel = "REGISTER",
            description = "The list of jobs: .xlsx, .xls, .ods or .csv.")
    private Path register;

    @Mixin private ListOptions list;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = DayConverter.class,
            description = "The day of the run, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    @Option(names = "--json", description = "Print the outcome and its findings as JSON.")
    private boolean json;

    boolean json() {
        return json;
    }

    /** The folder that the register lies in, or the office folder where it lies in the intake. */
    Path beside(Main.World world) {
        return beside(file(world));
    }

    /** The same of any register. */
    static Path beside(Path file) {
        Path folder = Optional.ofNullable(file.getParent()).orElse(file);
        return isInIntake(file) ? folder.getParent() : folder;
    }

    /** Whether the register lies in the intake of an office folder. */
    boolean isInIntake(Main.World world) {
        return isInIntake(file(world));
    }

    private static boolean isInIntake(Path file) {
        Path folder = file.getParent();
        return folder != null
                && folder.endsWith(OfficeFolder.INTAKE)
                && Files.isDirectory(folder.resolveSibling("tables"));
    }

    /** The request to read, with relative paths taken from the working directory. */
    Request request(Main.World world) {
        Path beside = beside(world);
        Path tablesPath = list.tables(world, beside);
        return new Request(
                new Request.Register(file(world), list.sheet()),
                new Request.FirmFiles(tablesPath, Optional.empty(), rules(tablesPath)),
                beside,
                new Request.Run(
                        asOf.orElseGet(() -> world.today(tablesPath)),
                        world.clock().instant(),
                        Version.text()),
                Request.Extras.NONE,
                Request.LedgerUse.NONE);
    }

    private Path file(Main.World world) {
        return world.directory().resolve(register).normalize();
    }

    /** The firm's rules, in the folder of tables or beside the workbook of tables. */
    static Optional<Path> rules(Path tables) {
        return existing(
                Files.isRegularFile(tables)
                        ? tables.resolveSibling("rules")
                        : tables.resolve("rules"));
    }

    /** The ledger beside the firm's tables, where the firm keeps one. */
    static Optional<LedgerPlace> ledger(Path tables) {
        return Optional.of(LedgerPlace.in(tables.resolveSibling("")))
                .filter(LedgerPlace::isExpected);
    }

    static Optional<Path> existing(Path folder) {
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
