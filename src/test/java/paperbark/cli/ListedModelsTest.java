package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.firm.Listing;

/**
 * A published list of models becomes rows of the products table. The headings are those that the
 * regulator's register is said to show: brand, model, certificates per zone, eligible from and to.
 */
class ListedModelsTest {
    private static final String LIST =
            """
            Register of models,,,,,,,,,,,
            Brand,Model,Type,Booster,Capacity (L),Eligible From,Eligible To,Zone 1,Zone 2,Zone 3,Zone 4,Zone 5
            DUNLIN,D270-A,heat pump,electric,270,1/11/2023,,21,22,26,29,27
            Dunlin,D200-A,heat pump,none,200,1/11/2023,30/11/2026,15,15,18,19,19
            Dunlin,D200-A,heat pump,none,200,1/12/2026,,14,14,17,18,18
            Dunlin,D300-N,heat pump,electric,300,1/12/2026,,24,25,29,31,30
            Dunlin,D301-N,,,,1/12/2026,,24,25,29,31,30
            Dunlin,D302-N,heat pump,electric,300,soon,,24,25,29,31,30
            Somebody,X-1,heat pump,electric,300,1/12/2026,,24,25,29,31,30
            """;

    @TempDir private Path directory;

    @BeforeEach
    void write() throws IOException {
        Path tables = Files.createDirectories(directory.resolve("tables"));
        try (Stream<Path> sample = Files.list(Path.of("input-samples/tables"))) {
            for (Path table : sample.filter(Files::isRegularFile).toList()) {
                Files.copy(table, tables.resolve(table.getFileName()));
            }
        }
        Files.writeString(directory.resolve("list.csv"), LIST);
    }

    private Program.Run run(String... more) {
        return Program.run(
                directory,
                Stream.concat(
                                Stream.of(
                                        "listed-models",
                                        "list.csv",
                                        "--version",
                                        "54",
                                        "--day",
                                        "2026-11-20"),
                                Stream.of(more))
                        .toArray(String[]::new));
    }

    @Test
    void itSaysWhatIsNewWhatChangedAndWhatIsGoneAndChangesNothing() throws IOException {
        Path products = directory.resolve("tables/products.csv");
        String before = Files.readString(products);
        Program.Run run = run();
        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("New models: 1\n  Dunlin D300-N from 2026-12-01")
                .contains("Listed anew from a further day: 1\n  Dunlin D200-A from 2026-12-01")
                .contains("Dunlin D270-A: STCs zone 4 28 -> 29")
                .contains("Dunlin D200-A: Eligible to (empty) -> 2026-11-30")
                .contains("Left out, because kind, boost or litres are not told: 1")
                .contains("Ternlight TL-E22-250")
                .doesNotContain("Somebody");
        assertThat(run.err()).contains("list.csv > F8 \"Eligible From\"");
        assertThat(Files.readString(products)).isEqualTo(before);
    }

    @Test
    void writtenItIsInTheTableWithVersionAndDayAndASecondListChangesNothing() throws IOException {
        assertThat(run("--write").exitCode()).isZero();
        FirmTables tables =
                FirmTablesReader.read(directory.resolve("tables")).result().orElseThrow();
        assertThat(FirmTablesReader.read(directory.resolve("tables")).findings()).isEmpty();
        Listing earlier = listing(tables, "D200-A", LocalDate.of(2026, 11, 30));
        Listing later = listing(tables, "D200-A", LocalDate.of(2026, 12, 1));
        assertThat(earlier.registerVersion()).isEqualTo("54");
        assertThat(earlier.stcs()).containsEntry(4, 19);
        assertThat(later.stcs()).containsEntry(4, 18);
        assertThat(tables.product("Dunlin", "D200-A").orElseThrow().serialPattern())
                .as("what the firm knows of the model stays")
                .isPresent();
        assertThat(listing(tables, "D270-A", LocalDate.of(2026, 12, 1)).stcs())
                .containsEntry(4, 29);
        assertThat(tables.product("Dunlin", "D300-N").orElseThrow().litres()).isEqualTo(300);
        assertThat(tables.product("Ternlight", "TL-E22-250")).as("gone is only told").isPresent();
        assertThat(Files.readString(directory.resolve("tables/products.csv")))
                .contains("\"listed: list.csv, version 54, 2026-11-20\"");
        assertThat(directory.resolve("tables/before/products.csv")).exists();

        Program.Run again = run();
        assertThat(again.out())
                .contains("New models: 0")
                .contains("Listed anew from a further day: 0")
                .contains("Other figures: 0");
    }

    @Test
    void headingsOfAnotherListAreTaughtByATable() throws IOException {
        Files.writeString(
                directory.resolve("list.csv"),
                """
                Make,Product code,Vol,Valid,Z4
                Dunlin,D300-N,300,1/12/2026,31
                """);
        assertThat(run().exitCode()).isEqualTo(11);
        Files.writeString(
                directory.resolve("tables/listed-columns.csv"),
                """
                field,alias,always
                maker,Make,
                model,Product code,
                litres,Vol,
                eligible-from,Valid,
                stcs-zone-4,Z4,
                kind,,heat pump
                boost,,electric
                """);
        Program.Run run = run("--write");
        assertThat(run.out()).contains("New models: 1");
        FirmTables tables =
                FirmTablesReader.read(directory.resolve("tables")).result().orElseThrow();
        assertThat(listing(tables, "D300-N", LocalDate.of(2026, 12, 1)).stcs())
                .isEqualTo(Map.of(4, 31));
    }

    private static Listing listing(FirmTables tables, String model, LocalDate day) {
        List<Listing> listings = tables.product("Dunlin", model).orElseThrow().listings();
        return listings.stream().filter(l -> l.eligible().contains(day)).findFirst().orElseThrow();
    }
}
