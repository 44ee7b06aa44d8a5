package paperbark.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Writes a firm's rule tables for tests. Rows are given without the closing provenance, which is
 * the same for all: source {@code test-list}, confidence {@code published}.
 */
public final class Overlay {
    private static final String PROVENANCE = ",source,pinpoint,confidence,confirmed_on,note\n";

    private final Path folder;

    private Overlay(Path folder) {
        this.folder = folder;
    }

    /** In an empty folder. */
    public static Overlay in(Path folder) {
        return new Overlay(folder)
                .file(
                        "sources.csv",
                        "id,title,publisher,instrument,version,published,read_on,link\n"
                                + "test-list,List made for a test,Nobody,,,,,\n");
    }

    /** A file as it is. */
    public Overlay file(String name, String text) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A table of rows; {@code headings} and rows without provenance. */
    public Overlay table(String name, String headings, String... rows) {
        StringBuilder text = new StringBuilder(headings).append(PROVENANCE);
        for (String row : rows) {
            text.append(row).append(",test-list,,published,,\n");
        }
        return file(name, text.toString());
    }

    /** Factors such as {@code 2025-02-01,,1D,4,40,3,3,,}. */
    public Overlay factors(String... rows) {
        return table(
                "veec/factors.csv",
                "from,to,activity,climate_zone,abatement_mwh,sef_mwh_year_per_gj,"
                        + "aef_mwh_year_per_gj,location_factor,discount_factor",
                rows);
    }

    /** Listed counts such as {@code 2025-02-01,,Dunlin,DN-270,1D,4,12}. */
    public Overlay listedCounts(String... rows) {
        return table(
                "veec/listed-counts.csv",
                "from,to,maker,model,activity,climate_zone,certificates",
                rows);
    }

    /** Single figures of the VEEC rules such as {@code 2025-02-01,,count_rounding,down}. */
    public Overlay conditions(String... rows) {
        return table("veec/conditions.csv", "from,to,setting,value", rows);
    }

    /** The rulebook with these tables laid over the shipped ones. */
    public Rulebook load() {
        return Rulebook.load(Optional.of(folder));
    }
}
