package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Typeface;

/**
 * How much a pack costs beside the least that it could cost: PDFBox writing the same runs of text
 * and the same boxes at known places, untagged. Both in one process and in turns, so that the ratio
 * holds on a busy machine too. Run by {@code mvn -Pbench verify}.
 */
public final class GlyphRunBench {
    private static final int ROUNDS = Integer.getInteger("bench.rounds", 5);
    private static final int PACKS_A_ROUND = 40;
    private static final PrintStream OUT = System.out;

    private GlyphRunBench() {}

    /** A step that is drawn again: words in a font, or a box when there are none. */
    private record Step(String words, String font, float size, float[] place) {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException {
        Packs packs = new Packs(Optional.empty());
        List<CaseFile> jobs = List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump());
        List<List<List<Step>>> known = new ArrayList<>();
        for (CaseFile job : jobs) {
            known.add(steps(packs.make(job, List.of()).pdf()));
        }
        for (int round = 1; round <= ROUNDS; round++) {
            long begun = processor();
            for (int i = 0; i < PACKS_A_ROUND; i++) {
                packs.make(jobs.get(i % jobs.size()), List.of());
            }
            long made = processor();
            for (int i = 0; i < PACKS_A_ROUND; i++) {
                write(known.get(i % known.size()));
            }
            long written = processor();
            OUT.printf(
                    Locale.ROOT,
                    "round %d: %5.1f packs and %5.1f bare documents a second of processor, %4.1f times as much%n",
                    round,
                    PACKS_A_ROUND * 1e9 / (made - begun),
                    PACKS_A_ROUND * 1e9 / (written - made),
                    (made - begun) / (double) (written - made));
        }
    }

    private static long processor() {
        return ((com.sun.management.OperatingSystemMXBean)
                        ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    private static List<List<Step>> steps(byte[] pdf) throws IOException {
        List<List<Step>> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                pages.add(page.hasContents() ? steps(page) : List.of());
            }
        }
        return pages;
    }

    private static List<Step> steps(PDPage page) throws IOException {
        List<Step> steps = new ArrayList<>();
        List<COSBase> before = new ArrayList<>();
        String font = "";
        float size = 0;
        float[] place = {};
        for (Object token : new PDFStreamParser(page).parse()) {
            if (!(token instanceof Operator operator)) {
                before.add((COSBase) token);
                continue;
            }
            switch (operator.getName()) {
                case "Tf" -> {
                    font = ((COSName) before.get(0)).getName();
                    size = ((COSNumber) before.get(1)).floatValue();
                }
                case "Tm" -> place = floats(before.subList(4, 6));
                case "Tj" ->
                        steps.add(new Step(words(before.get(0), page, font), font, size, place));
                case "re" -> steps.add(new Step("", "", 0, floats(before)));
                default -> {}
            }
            before.clear();
        }
        return steps;
    }

    private static String words(COSBase string, PDPage page, String name) throws IOException {
        PDFont font = page.getResources().getFont(COSName.getPDFName(name));
        StringBuilder words = new StringBuilder();
        byte[] codes = ((COSString) string).getBytes();
        for (int i = 0; i + 1 < codes.length; i += 2) {
            words.append(font.toUnicode((codes[i] & 0xFF) << 8 | codes[i + 1] & 0xFF));
        }
        return words.toString();
    }

    private static float[] floats(List<COSBase> numbers) {
        float[] floats = new float[numbers.size()];
        for (int i = 0; i < floats.length; i++) {
            floats[i] = ((COSNumber) numbers.get(i)).floatValue();
        }
        return floats;
    }

    private static void write(List<List<Step>> pages) throws IOException {
        try (PDDocument document = new PDDocument()) {
            Typeface typeface = Typeface.shared();
            Map<String, PDFont> fonts = new HashMap<>();
            fonts.put("F1", PDType0Font.load(document, typeface.regular(), true));
            fonts.put("F2", PDType0Font.load(document, typeface.bold(), true));
            fonts.put("F3", PDType0Font.load(document, typeface.italic(), true));
            fonts.put("F4", PDType0Font.load(document, typeface.boldItalic(), true));
            for (List<Step> steps : pages) {
                PDPage page = new PDPage(PDRectangle.A4);
                document.addPage(page);
                try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                    for (Step step : steps) {
                        draw(step, fonts, content);
                    }
                }
            }
            document.save(new ByteArrayOutputStream());
        }
    }

    private static void draw(Step step, Map<String, PDFont> fonts, PDPageContentStream content)
            throws IOException {
        float[] at = step.place();
        if (step.words().isEmpty()) {
            content.addRect(at[0], at[1], at[2], at[3]);
            content.fill();
            return;
        }
        content.beginText();
        content.setFont(fonts.get(step.font()), step.size());
        content.newLineAtOffset(at[0], at[1]);
        content.showText(step.words());
        content.endText();
    }
}
