package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Errors speak office English; the program's own terms are seen with {@code --debug} alone. */
class PlainWordsTest {
    private static final Pattern OWN_TERMS =
            Pattern.compile("\\w+(Exception|Error)\\b|\\b(java|javax|org|com)\\.[a-z]|\\tat ");

    @TempDir private Path folder;

    @BeforeEach
    void damagedRegisters() throws IOException {
        Path week = Path.of("input-samples/week-47.xlsx");
        Path broken = Files.copy(week, folder.resolve("broken-sheet.xlsx"));
        try (FileSystem inside = FileSystems.newFileSystem(broken)) {
            Files.writeString(inside.getPath("xl/worksheets/sheet1.xml"), "<worksheet><sheetData");
        }
        Path empty = Files.copy(week, folder.resolve("no-workbook.xlsx"));
        try (FileSystem inside = FileSystems.newFileSystem(empty)) {
            Files.delete(inside.getPath("xl/workbook.xml"));
        }
        byte[] bytes = Files.readAllBytes(week);
        Files.write(folder.resolve("cut.xlsx"), Arrays.copyOf(bytes, bytes.length / 2));
        Files.write(folder.resolve("old.xls"), new byte[] {(byte) 0xd0, (byte) 0xcf, 0x11, 1, 2});
        Files.writeString(folder.resolve("form.pdf"), "%PDF-1.7\nno form\n");
        Files.writeString(folder.resolve("advice.csv"), "a,\"b\nc");
        Files.createDirectories(folder.resolve("tables/rules/stc"));
        Files.writeString(folder.resolve("tables/rules/stc/zones.csv"), "no,such,heading\n1,2,3\n");
        Files.writeString(folder.resolve("paperbark.db"), "no database");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "check broken-sheet.xlsx",
                "check no-workbook.xlsx",
                "check cut.xlsx",
                "check old.xls",
                "check form.pdf",
                "prepare broken-sheet.xlsx --out packs",
                "explain cut.xlsx SB-1",
                "form-fields form.pdf",
                "form-grid form.pdf --out grid.pdf",
                "rules --tables tables",
                "owed",
                "settle advice.csv",
                "export --out tables",
                "doctor .",
                "watch . --once",
                "print SB-1 --batch ."
            })
    void noClassIsNamed(String words) {
        Program.Run run = Program.run(folder, words.split(" "));

        assertThat(run.exitCode()).isNotIn(0, 1);
        assertThat(run.out() + run.err()).isNotBlank().doesNotContainPattern(OWN_TERMS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"check broken-sheet.xlsx --debug", "--debug owed"})
    void withDebugTheyAreShownBesideTheWords(String words) {
        Program.Run plain = Program.run(folder, words.replace("--debug", "").strip().split(" +"));
        Program.Run run = Program.run(folder, words.split(" "));

        assertThat(run.exitCode()).isEqualTo(plain.exitCode());
        assertThat(run.out()).isEqualTo(plain.out());
        assertThat(run.err()).contains("debug: ", "\tat ");
        // What the next run says is plain again.
        assertThat(Program.run(folder, "check", "broken-sheet.xlsx").err())
                .doesNotContain("debug: ");
    }

    @Test
    void theGallerySpeaksPlainlyToo() throws IOException {
        try (Stream<Path> all = Files.walk(Path.of("src/test/resources/findings"))) {
            List<Path> texts = all.filter(f -> f.endsWith("expected.txt")).toList();
            assertThat(texts).hasSizeGreaterThan(100);
            for (Path text : texts) {
                assertThat(Files.readString(text))
                        .as(text.toString())
                        .doesNotContainPattern(OWN_TERMS);
            }
        }
    }
}
