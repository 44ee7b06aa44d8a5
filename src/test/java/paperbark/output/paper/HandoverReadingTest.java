package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.PaperKind;

/**
 * The owner's handover as it is printed: in large print, and in words for whoever left school after
 * eight years. Left out are the words that Competition and Consumer Regulations 2010, regulation
 * 90, prescribes ({@code acl-wording.ftlh}), which may not be made easier, and the small print that
 * names sources.
 */
class HandoverReadingTest {
    private static final Packs PACKS = new Packs(Optional.empty());
    private static final float LARGE = 14f;

    static Stream<CaseFile> cases() {
        return Stream.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump());
    }

    /** A line of print in one size. */
    private record Line(String text, float size, float bottom, int page) {}

    private static List<Line> lines(CaseFile file) throws IOException {
        Pack pack = PACKS.make(file, List.of());
        PaperPages at =
                pack.papers().stream()
                        .filter(p -> p.kind() == PaperKind.HANDOVER)
                        .findFirst()
                        .orElseThrow();
        List<Line> lines = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            PDFTextStripper stripper =
                    new PDFTextStripper() {
                        @Override
                        protected void writeString(String text, List<TextPosition> at) {
                            float from = at.get(0).getYDirAdj();
                            StringBuilder same = new StringBuilder();
                            float size = at.get(0).getYScale();
                            for (TextPosition sign : at) {
                                if (Math.abs(sign.getYScale() - size) > 0.2f) {
                                    lines.add(
                                            new Line(
                                                    same.toString(),
                                                    size,
                                                    from,
                                                    getCurrentPageNo()));
                                    same.setLength(0);
                                    size = sign.getYScale();
                                }
                                same.append(sign.getUnicode());
                            }
                            lines.add(new Line(same.toString(), size, from, getCurrentPageNo()));
                        }
                    };
            stripper.setSortByPosition(true);
            stripper.setStartPage(at.firstPage());
            stripper.setEndPage(at.firstPage() + at.pageCount() - 1);
            stripper.getText(document);
        }
        return lines;
    }

    /** Large print alone, lines that follow each other closely as one text. */
    private static List<String> texts(List<Line> lines) {
        List<String> texts = new ArrayList<>();
        Line before = null;
        for (Line line : lines) {
            if (line.size() < LARGE - 0.1f || line.size() > LARGE + 0.1f) {
                continue;
            }
            boolean follows =
                    before != null
                            && before.page() == line.page()
                            && Math.abs(line.bottom() - before.bottom()) < LARGE * 1.45f
                            && !line.text().strip().startsWith("•");
            if (follows) {
                int last = texts.size() - 1;
                texts.set(last, texts.get(last) + " " + line.text().strip());
            } else {
                texts.add(line.text().strip());
            }
            before = line;
        }
        return texts.stream()
                .map(t -> t.replaceAll("\\s+", " ").replace("• ", ""))
                // Labels, values and cells are no sentences.
                .filter(t -> t.matches(".*[.!?]"))
                .filter(t -> !isPrescribed(t))
                .toList();
    }

    private static boolean isPrescribed(String text) {
        return WordingTest.PRESCRIBED.stream().anyMatch(words -> words.contains(text));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void isReadAfterEightYearsOfSchool(CaseFile file) throws IOException {
        List<String> texts = texts(lines(file));
        ReadingGrade grade = ReadingGrade.of(texts);

        assertThat(String.join(" ", texts))
                .as("the text is really there")
                .contains("Hot water burns.", "if our work has a fault", "Never open, move or mend")
                .doesNotContain("guarantees that cannot be excluded");
        assertThat(grade.words()).isGreaterThan(300);
        assertThat(grade.grade()).as("%s of %s", grade, texts).isLessThan(8);
        for (String sentence :
                texts.stream().flatMap(t -> ReadingGrade.sentences(t).stream()).toList()) {
            assertThat(sentence.split("\\s+")).as(sentence).hasSizeLessThanOrEqualTo(30);
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void isInLargePrint(CaseFile file) throws IOException {
        List<Line> lines = lines(file);
        List<String> small =
                lines.stream()
                        .filter(l -> l.size() < LARGE - 0.1f && !l.text().isBlank())
                        .map(Line::text)
                        .map(String::strip)
                        .toList();
        int letters = lines.stream().mapToInt(l -> l.text().length()).sum();

        assertThat(small.stream().mapToInt(String::length).sum())
                .as("only head, foot and sources are smaller: %s", small)
                .isLessThan(letters / 4);
        assertThat(small)
                .noneMatch(
                        t -> t.contains("burns") || t.contains("Hot water") && t.contains("child"));
    }

    @Test
    void aHardTextWouldBeNoticed() {
        assertThat(ReadingGrade.of(List.of(String.join(" ", WordingTest.PRESCRIBED))).grade())
                .as("the prescribed words themselves")
                .isGreaterThan(8);
    }
}
