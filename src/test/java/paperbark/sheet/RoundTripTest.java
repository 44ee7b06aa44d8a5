package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.TEXT_CLEANED;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Any text comes back from a file as its cleaned form. */
class RoundTripTest {

    @Property(tries = 500)
    void cleaningTwiceIsCleaningOnce(@ForAll String text) {
        String once = CleanText.of(text).text();
        assertThat(CleanText.of(once).text()).isEqualTo(once);
        assertThat(CleanText.of(once).troubles())
                .extracting(CellTrouble::code)
                .doesNotContain(TEXT_CLEANED);
    }

    @Property(tries = 200)
    void textComesBackFromCsv(@ForAll("texts") List<String> texts) throws IOException {
        for (char delimiter : new char[] {',', ';', '\t', '|'}) {
            CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(delimiter).get();
            StringWriter out = new StringWriter();
            try (CSVPrinter printer = new CSVPrinter(out, format)) {
                printer.printRecord("Job", "Owner");
                for (int i = 0; i < texts.size(); i++) {
                    printer.printRecord("SB-" + i, texts.get(i));
                }
            }
            byte[] content = out.toString().getBytes(StandardCharsets.UTF_8);
            assertThat(owners(Books.csv(content))).isEqualTo(cleaned(texts));
        }
    }

    @Property(tries = 60)
    void textComesBackFromWorkbooks(@ForAll("xmlTexts") List<String> texts) throws IOException {
        byte[] xlsx = Books.xlsx(sheet -> fill(sheet, texts));
        byte[] xls = Books.xls(sheet -> fill(sheet, texts));
        assertThat(owners(read("week.xlsx", xlsx))).isEqualTo(cleaned(texts));
        assertThat(owners(read("week.xls", xls))).isEqualTo(cleaned(texts));
    }

    @Property(tries = 300)
    void anyBytesGiveASheetOrAFinding(@ForAll byte[] bytes) {
        Reading<Sheet> reading = Books.csv(bytes);
        assertThat(reading.result().isPresent() || !reading.findings().isEmpty()).isTrue();
    }

    @Provide
    Arbitrary<List<String>> texts() {
        Arbitrary<String> any = Arbitraries.strings().excludeChars('\0').ofMaxLength(30);
        Arbitrary<String> nasty =
                Arbitraries.strings().withChars("\",;\t \r\n='a\u00A0\u200Bé_x").ofMaxLength(12);
        return Arbitraries.oneOf(any, nasty)
                .filter(text -> text.chars().noneMatch(c -> Character.isSurrogate((char) c)))
                .list()
                .ofMinSize(1)
                .ofMaxSize(8);
    }

    /** Without the characters that XML cannot hold, for which the writer puts question marks. */
    @Provide
    Arbitrary<List<String>> xmlTexts() {
        return texts().map(list -> list.stream().map(RoundTripTest::legal).toList());
    }

    private static String legal(String text) {
        return text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", "");
    }

    private static void fill(org.apache.poi.ss.usermodel.Sheet sheet, List<String> texts) {
        for (int i = 0; i < texts.size(); i++) {
            Books.row(sheet, i + 2, "SB-" + i, texts.get(i));
        }
    }

    private static Reading<Sheet> read(String name, byte[] content) {
        try {
            Path folder = Files.createTempDirectory("round-trip");
            Path file = Books.save(folder, name, content);
            Reading<Sheet> reading = SheetReader.read(file, Books.KNOWN, Optional.empty());
            Files.delete(file);
            Files.delete(folder);
            return reading;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> owners(Reading<Sheet> reading) {
        Sheet sheet = Books.sheet(reading);
        return IntStream.range(0, sheet.rows().size())
                .mapToObj(i -> sheet.rows().get(i).cell(sheet.columns().get(1)).text())
                .toList();
    }

    private static List<String> cleaned(List<String> texts) {
        return texts.stream().map(text -> CleanText.of(text).text()).toList();
    }
}
