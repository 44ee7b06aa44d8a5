package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What must be so in an office folder at any moment, read from disk and database by code that
 * shares nothing with the program.
 */
final class Invariants {
    private static final ObjectMapper JSON = new ObjectMapper();

    private Invariants() {}

    /**
     * At any moment: each register dropped is in one place, byte for byte; each published folder is
     * whole and in the ledger; no serial is claimed twice.
     *
     * @param dropped hashes of the registers that were dropped
     */
    static void hold(Path office, List<String> dropped) throws IOException {
        List<String> there = new ArrayList<>();
        for (String place : List.of("intake", "work", "filed", "returned")) {
            for (Path file : files(office.resolve(place))) {
                String hash = sha256(file);
                if (dropped.contains(hash)) {
                    there.add(hash);
                }
            }
        }
        assertThat(there)
                .as("registers, each in one place")
                .containsExactlyInAnyOrderElementsOf(dropped);
        Map<String, String> ledger = batches(office);
        try (Stream<Path> folders = Files.list(office.resolve("packs"))) {
            for (Path folder : folders.filter(f -> !name(f).startsWith(".")).toList()) {
                assertThat(ledger)
                        .as("published means claimed")
                        .containsEntry(name(folder), sha256(folder.resolve("manifest.json")));
                whole(folder);
            }
        }
        assertThat(
                        query(
                                office,
                                "SELECT count(*) FROM (SELECT serial_key FROM serial WHERE active = 1 GROUP BY scheme, serial_key HAVING count(*) > 1)"))
                .isEqualTo("0");
        assertThat(query(office, "PRAGMA integrity_check")).isEqualTo("ok");
    }

    /** After a clean start nothing is half done. */
    static void atRest(Path office, int claims) throws IOException {
        assertThat(files(office.resolve("intake"))).isEmpty();
        assertThat(files(office.resolve("work"))).isEmpty();
        assertThat(query(office, "SELECT count(*) FROM progress WHERE state <> 'filed'"))
                .isEqualTo("0");
        assertThat(query(office, "SELECT count(*) FROM claim WHERE active = 1"))
                .isEqualTo(String.valueOf(claims));
        for (String batch : batches(office).keySet()) {
            assertThat(office.resolve("packs").resolve(batch).resolve("manifest.json"))
                    .isRegularFile();
        }
    }

    private static void whole(Path folder) throws IOException {
        JsonNode outputs = JSON.readTree(folder.resolve("manifest.json").toFile()).path("outputs");
        Map<String, String> expected = new TreeMap<>();
        outputs.properties()
                .forEach(e -> expected.put(e.getKey(), e.getValue().path("sha256").asText()));
        Map<String, String> found = new TreeMap<>();
        for (Path file : files(folder)) {
            if (!name(file).equals("manifest.json")) {
                found.put(folder.relativize(file).toString(), sha256(file));
            }
        }
        assertThat(found).as("the folder equals its manifest").isEqualTo(expected);
    }

    private static Map<String, String> batches(Path office) {
        Map<String, String> batches = new TreeMap<>();
        String rows =
                query(
                        office,
                        "SELECT group_concat(name || '=' || detail_sha256, ' ') FROM entry WHERE kind = 'batch'");
        for (String row : rows == null ? new String[0] : rows.split(" ")) {
            batches.put(row.substring(0, row.indexOf('=')), row.substring(row.indexOf('=') + 1));
        }
        return batches;
    }

    static String query(Path office, String query) {
        try (Connection connection =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + office.resolve("paperbark.db"));
                Statement statement = connection.createStatement();
                var rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        } catch (SQLException e) {
            throw new IllegalStateException(query, e);
        }
    }

    /** Changes an office's ledger behind the program's back. */
    static void change(Path office, String statement) throws SQLException {
        try (Connection connection =
                        DriverManager.getConnection(
                                "jdbc:sqlite:" + office.resolve("paperbark.db"));
                Statement change = connection.createStatement()) {
            change.executeUpdate(statement);
        }
    }

    static List<Path> files(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        } catch (UncheckedIOException vanished) {
            return List.of();
        }
    }

    static String sha256(Path file) throws IOException {
        try {
            return HexFormat.of()
                    .formatHex(
                            MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String name(Path path) {
        return path.getFileName().toString();
    }
}
