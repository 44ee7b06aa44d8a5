package paperbark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import paperbark.batch.Request;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;
import paperbark.office.LedgerProof;
import paperbark.office.OfficeFolder;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The words that say which register is meant and what is made of it. */
final class RegisterOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Mixin private ReadingOptions reading;

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
            names = "--explain",
            description = "Say why each finding matters, and list all of them.")
    private boolean explain;

    @Option(
            names = "--ledger",
            paramLabel = "LEDGER",
            description =
                    "The ledger that the claims go into, a file or jdbc:postgresql://HOST/DATABASE; otherwise the one that \"ledger.txt\" beside the tables names, or \"paperbark.db\" there, where there is one.")
    private Optional<String> ledger = Optional.empty();

    @Option(
            names = "--again",
            description = "Prepare jobs once more that the ledger has as done and unchanged.")
    private boolean again;

    boolean json() {
        return reading.json();
    }

    boolean explain() {
        return explain;
    }

    /** The request, with relative paths taken from the working directory. */
    Request request(Main.World world, String defaultOut, Request.Extras extras) {
        Request read = reading.request(world);
        Path beside = reading.beside(world);
        Path ownTemplates = beside.resolve("templates");
        boolean toReturn = defaultOut.isEmpty() && reading.isInIntake(world);
        String place = toReturn ? OfficeFolder.RETURNED : defaultOut;
        Path tables = read.firm().tables();
        return new Request(
                read.register(),
                new Request.FirmFiles(
                        tables,
                        templates
                                .map(folder -> named(world, folder))
                                .or(() -> ReadingOptions.existing(ownTemplates)),
                        read.firm().rules()),
                out.map(world.directory()::resolve).orElse(beside.resolve(place)).normalize(),
                read.run(),
                extras,
                new Request.LedgerUse(
                        ledger.map(l -> LedgerPlace.named(l, world.directory()))
                                .or(() -> ReadingOptions.ledger(tables)),
                        again));
    }

    /**
     * What is proved of the ledger that a request is for: an office's folders agree with it, and
     * are not without it.
     *
     * @throws paperbark.ledger.LedgerException when they do not, or are
     */
    Proof proof(Main.World world, Request request) throws IOException {
        Proof proof = new Proof();
        LedgerPlace place =
                request.ledger()
                        .place()
                        .orElseGet(
                                () -> LedgerPlace.in(request.firm().tables().resolveSibling("")));
        LedgerOptions.look(world, LedgerProof.before(place, proof));
        return proof;
    }

    private Path named(Main.World world, Path folder) {
        Path resolved = world.directory().resolve(folder);
        if (!Files.isDirectory(resolved)) {
            throw new ParameterException(
                    spec.commandLine(), "There is no folder " + resolved + " for --templates.");
        }
        return resolved;
    }
}
