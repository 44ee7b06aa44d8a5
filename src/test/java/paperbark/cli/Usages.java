package paperbark.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** What each command says of itself, for the page of the manual that lists them. */
public final class Usages {
    private Usages() {}

    /** The help of each command by its name, in the order of the program's own help. */
    public static Map<String, String> all() {
        Map<String, String> usages = new LinkedHashMap<>();
        Program.line(Path.of(""))
                .getSubcommands()
                .forEach((name, line) -> usages.put(name, line.getUsageMessage()));
        return usages;
    }
}
