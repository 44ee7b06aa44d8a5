package paperbark.sheet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpenSheetErasureTest {
    private static final String ROWS =
            """
            <table:tracked-changes><table:cell-content-change><table:previous><table:change-track-table-cell>
            <text:p>Zyxna before</text:p></table:change-track-table-cell></table:previous></table:cell-content-change></table:tracked-changes>
            <table:table table:name="Week">
            <table:table-row>%s%s%s%s</table:table-row>
            <table:table-row>%s%s<table:table-cell table:style-name="ce1" office:value-type="float" office:value="5550"><text:p>5550</text:p></table:table-cell>
            <table:table-cell office:value-type="string"><office:annotation><text:p>ring Zyxna</text:p></office:annotation><text:p>x</text:p></table:table-cell></table:table-row>
            <table:table-row>%s%s</table:table-row>
            </table:table>
            <table:database-ranges><table:database-range><table:filter><table:filter-condition table:value="Zyxna"/></table:filter></table:database-range></table:database-ranges>
            """
                    .formatted(
                            text("Job"),
                            text("Owner"),
                            text("Phone"),
                            text("Serial"),
                            text("J-1"),
                            text("Zyxna"),
                            text("J-2"),
                            text("Ann"));

    @TempDir private Path folder;

    @Test
    void nothingOfTheRowIsLeftAnywhere() throws IOException {
        byte[] left = erased(parts()).orElseThrow();
        Map<String, String> read = unzipped(left);
        assertThat(read).doesNotContainKey("Thumbnails/thumbnail.png");
        assertThat(read.values()).noneMatch(part -> part.contains("Zyxna"));
        assertThat(read.values())
                .noneMatch(part -> part.contains("5550") || part.contains("humbnail"));
        assertThat(read.keySet().iterator().next()).isEqualTo("mimetype");
        Sheet sheet = Books.sheet(Books.read(folder, "left.ods", left));
        assertThat(sheet.rows()).extracting(Row::number).containsExactly(2, 3);
        assertThat(sheet.rows().get(0).cells().keySet()).containsExactly(1);
        assertThat(sheet.rows().get(1).cells().get(2).text()).isEqualTo("Ann");
        assertThat(erased(unzippedBytes(left))).isEmpty();
    }

    @Test
    void whatHoldsDocumentsOfItsOwnIsNotTakenForEmptied() {
        Map<String, byte[]> parts = parts();
        parts.put("Object 1/content.xml", "<x>Zyxna</x>".getBytes(UTF_8));
        assertThatIOException().isThrownBy(() -> erased(parts));
    }

    private static Optional<byte[]> erased(Map<String, byte[]> parts) throws IOException {
        return new OpenSheetErasure("J-1"::equals).of(Books.zip(parts));
    }

    private static Map<String, byte[]> parts() {
        Map<String, byte[]> parts =
                new LinkedHashMap<>(
                        OpenSheetTest.parts(
                                "</table:table>" + ROWS + "<table:table table:name=\"Last\">"));
        parts.put("Thumbnails/thumbnail.png", "a picture of Zyxna".getBytes(UTF_8));
        String manifest = new String(parts.get("META-INF/manifest.xml"), UTF_8);
        parts.put(
                "META-INF/manifest.xml",
                manifest.replace(
                                "</manifest:manifest>",
                                "<manifest:file-entry manifest:full-path=\"Thumbnails/thumbnail.png\" manifest:media-type=\"image/png\"/></manifest:manifest>")
                        .getBytes(UTF_8));
        return parts;
    }

    private static Map<String, String> unzipped(byte[] content) throws IOException {
        Map<String, String> parts = new LinkedHashMap<>();
        unzippedBytes(content).forEach((name, part) -> parts.put(name, new String(part, UTF_8)));
        return parts;
    }

    private static Map<String, byte[]> unzippedBytes(byte[] content) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(content))) {
            for (ZipEntry part = zip.getNextEntry(); part != null; part = zip.getNextEntry()) {
                parts.put(part.getName(), zip.readAllBytes());
            }
        }
        return parts;
    }

    private static String text(String text) {
        return "<table:table-cell office:value-type=\"string\"><text:p>"
                + text
                + "</text:p></table:table-cell>";
    }
}
