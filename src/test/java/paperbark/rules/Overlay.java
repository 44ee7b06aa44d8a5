package paperbark.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;

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

    /**
     * Factors such as {@code 2025-02-01,,1D,4,40,3,3,,} of the version {@code test}, which is then
     * in force with 0.393 t a MWh and a least co-payment of 200 dollars.
     */
    public Overlay factors(String... rows) {
        String[] ofVersion =
                Stream.of(rows)
                        .map(row -> row.replaceFirst("^((?:[^,]*,){4})", "$1test,"))
                        .toArray(String[]::new);
        return versionedFactors(ofVersion).versionInForce();
    }

    /** Factors such as {@code 2025-02-01,,1D,4,23.0,40,3,3,,} and nothing else. */
    public Overlay versionedFactors(String... rows) {
        return table(
                "veec/factors.csv",
                "from,to,activity,climate_zone,version,abatement_mwh,sef_mwh_year_per_gj,"
                        + "aef_mwh_year_per_gj,location_factor,discount_factor",
                rows);
    }

    /**
     * Listed counts such as {@code 2025-02-01,,Dunlin,DN-270,1D,4,12}, beside a version in force.
     */
    public Overlay listedCounts(String... rows) {
        return table(
                        "veec/listed-counts.csv",
                        "from,to,maker,model,activity,climate_zone,certificates",
                        rows)
                .versionInForce();
    }

    private Overlay versionInForce() {
        if (!Files.exists(folder.resolve("veec/emission-factors.csv"))) {
            emissionFactors("2025-02-01,,test,0.393");
        }
        return Files.exists(folder.resolve("veec/conditions.csv")) ? this : conditions();
    }

    /** Versions with their emission factors such as {@code 2025-02-01,,23.0,0.393}. */
    public Overlay emissionFactors(String... rows) {
        return table("veec/emission-factors.csv", "from,to,version,eef_t_per_mwh", rows);
    }

    /**
     * Single figures of the VEEC rules such as {@code 2025-02-01,,count_rounding,down}, beside a
     * least co-payment of 200 dollars.
     */
    public Overlay conditions(String... rows) {
        return table(
                "veec/conditions.csv",
                "from,to,setting,value",
                Stream.concat(
                                Stream.of("2025-02-01,,co_payment_least_dollars,200"),
                                Stream.of(rows))
                        .toArray(String[]::new));
    }

    /** The rulebook with these tables laid over the shipped ones. */
    public Rulebook load() {
        return Rulebook.load(Optional.of(folder));
    }
}
