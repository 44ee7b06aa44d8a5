package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import paperbark.batch.PageMap;
import paperbark.cli.Program;
import paperbark.finding.FindingCode;
import paperbark.output.paper.SignBox;
import paperbark.scan.Scanned;

/**
 * Every finding has a folder named after its code with the smallest register that brings it about
 * ({@code register.csv}, {@code .xlsx} or {@code .xls}) and what the terminal then says of it
 * ({@code expected.txt}). The sample firm's tables serve unless the folder has {@code tables};
 * {@code words.txt} holds other words for the command line, {@code before.txt} what has happened
 * until then: a command a line, a statement that changes the ledger, or pages of a pack that are
 * scanned ({@code scan: PACK PAGE... [unsigned] [unmarked]}). {@code -Dgallery.renew} writes the
 * expected texts anew.
 */
class GalleryTest {
    private static final Path GALLERY = Path.of("src/test/resources/findings");
    private static final Path SAMPLE_TABLES = Path.of("input-samples/tables").toAbsolutePath();
    private static final boolean RENEW = Boolean.getBoolean("gallery.renew");

    @TempDir private Path directory;

    @ParameterizedTest
    @EnumSource(FindingCode.class)
    void everyFindingIsShownAsInTheGallery(FindingCode code) throws IOException {
        Path room = GALLERY.resolve(code.code());
        assertThat(room).as("every code needs its folder").isDirectory();
        copy(room);
        before(room);
        Program.Run run = Program.run(directory, words(room));
        String shown =
                Arrays.stream(run.out().split("\\R\\R"))
                        .filter(
                                block ->
                                        block.lines()
                                                .findFirst()
                                                .orElse("")
                                                .endsWith("[" + code.code() + "]"))
                        .map(block -> block.lines().collect(Collectors.joining("\n", "", "\n")))
                        .collect(Collectors.joining("\n"));
        Path expected = room.resolve("expected.txt");
        assertThat(run.err()).isEmpty();
        assertThat(shown)
                .as("the finding must be brought about; all that was said: %s", run.out())
                .isNotEmpty();
        if (RENEW && !"true".equals(System.getenv("CI"))) {
            Files.writeString(expected, shown);
        }
        assertThat(shown).isEqualTo(Files.readString(expected));
    }

    @Test
    void noFolderIsLeftOver() throws IOException {
        List<String> codes = Arrays.stream(FindingCode.values()).map(FindingCode::code).toList();
        try (Stream<Path> rooms = Files.list(GALLERY)) {
            assertThat(
                            rooms.filter(Files::isDirectory)
                                    .map(r -> r.getFileName().toString())
                                    .toList())
                    .isSubsetOf(codes);
        }
    }

    private void before(Path room) throws IOException {
        Path file = room.resolve("before.txt");
        if (!Files.exists(file)) {
            return;
        }
        for (String line : Files.readAllLines(file)) {
            if (line.startsWith("ledger: ")) {
                String place = "jdbc:sqlite:" + directory.resolve("paperbark.db");
                try (Connection ledger = DriverManager.getConnection(place);
                        Statement statement = ledger.createStatement()) {
                    statement.execute(line.substring("ledger: ".length()));
                } catch (SQLException e) {
                    throw new IllegalStateException(e);
                }
            } else if (line.startsWith("scan: ")) {
                scan(line.substring("scan: ".length()).split(" "));
            } else {
                assertThat(Program.run(directory, completed(room, line)).err()).isEmpty();
            }
        }
    }

    /** Pages of a pack as a pile of an office folder, signed and with their marks. */
    private void scan(String... words) throws IOException {
        List<String> said = List.of(words);
        Path pack = directory.resolve(said.get(0));
        List<SignBox> boxes =
                PageMap.in(pack.getParent().getParent()).orElseThrow().jobs().stream()
                        .flatMap(job -> job.papers().stream())
                        .flatMap(paper -> paper.boxes().stream())
                        .toList();
        try (Scanned pile = new Scanned()) {
            for (String word : said) {
                if (word.matches("[0-9]+")) {
                    pile.page(
                            pack,
                            Integer.parseInt(word),
                            said.contains("unsigned") ? List.of() : boxes,
                            !said.contains("unmarked"),
                            false);
                }
            }
            pile.save(Files.createDirectories(directory.resolve("scans")).resolve("pile.pdf"));
        }
    }

    private String[] completed(Path room, String line) {
        List<String> words = new ArrayList<>(List.of(line.strip().split("\\s+")));
        boolean reads =
                !List.of("ledger-new", "setup", "forget", "withdraw").contains(words.get(0));
        if (reads && !Files.isDirectory(room.resolve("tables"))) {
            words.addAll(List.of("--tables", SAMPLE_TABLES.toString()));
        }
        return words.toArray(String[]::new);
    }

    private String[] words(Path room) throws IOException {
        Path file = room.resolve("words.txt");
        List<String> words = new ArrayList<>();
        if (Files.exists(file)) {
            words.addAll(List.of(Files.readString(file).strip().split("\\s+")));
        } else {
            words.addAll(List.of("check", register(room)));
        }
        boolean ofOffice = List.of("scans", "photos").contains(words.get(0));
        if (!ofOffice
                && !Files.isDirectory(room.resolve("tables"))
                && !words.contains("--tables")) {
            words.addAll(List.of("--tables", SAMPLE_TABLES.toString()));
        }
        words.add("--explain");
        return words.toArray(String[]::new);
    }

    private static String register(Path room) throws IOException {
        try (Stream<Path> files = Files.list(room)) {
            return files.map(f -> f.getFileName().toString())
                    .filter(n -> n.startsWith("register."))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private void copy(Path room) throws IOException {
        try (Stream<Path> files = Files.walk(room)) {
            files.forEach(
                    from -> {
                        try {
                            Path to = directory.resolve(room.relativize(from).toString());
                            if (Files.isDirectory(from)) {
                                Files.createDirectories(to);
                            } else {
                                Files.copy(from, to);
                            }
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    });
        }
    }
}
