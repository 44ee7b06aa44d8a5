package paperbark.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** The program's version as built. */
final class Version implements IVersionProvider {

    /** The version, or {@code development} when run from classes. */
    static String text() {
        return Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
                .orElse("development");
    }

    @Override
    public String[] getVersion() {
        return new String[] {"Paperbark " + text()};
    }
}
