package paperbark.output.paper;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.Firm;
import paperbark.output.BatchInfo;
import paperbark.output.Label;
import paperbark.output.Letter;
import paperbark.output.PrintableText;
import paperbark.output.TemplateModel;
import paperbark.output.Typeface;

/**
 * Labels for folders and tanks, and envelopes for owners. What stands on them is the firm's own
 * templates' affair; where it stands is said here and in {@link LabelSheet}.
 */
public final class Labels {
    /** A run of more is hardly meant, and would fill the memory. */
    public static final int MOST_PAGES = 100;

    private static final String TENTHS = "%d.%dmm";

    private final Optional<Path> folder;
    private final Firm firm;
    private final LocalDate today;
    private final String version;

    /**
     * For a firm and day.
     *
     * @param folder the firm's templates, whose style is followed
     * @param firm who sends
     * @param today the day
     * @param version of the program
     */
    public Labels(Optional<Path> folder, Firm firm, LocalDate today, String version) {
        this.folder = folder;
        this.firm = firm;
        this.today = today;
        this.version = version;
    }

    /**
     * Where the address stands.
     *
     * @param word by which it is asked for
     * @param width of the page, in millimetres
     * @param height likewise
     */
    public enum Envelope {
        /** A page as large as an envelope for A4 folded in three. */
        DL("dl", 220, 110),
        /** A page as large as an envelope for A4 folded once. */
        C5("c5", 229, 162),
        /** A page to lie on top, folded in three, whose address shows in a window. */
        WINDOW("window", 210, 297);

        private final String word;
        private final int width;
        private final int height;

        Envelope(String word, int width, int height) {
            this.word = word;
            this.width = width;
            this.height = height;
        }

        /** The word by which it is asked for. */
        public String word() {
            return word;
        }
    }

    /**
     * Labels as a PDF, in order.
     *
     * @param labels at least one, and no more than fill {@link #MOST_PAGES}
     * @param kind name of the template for one label, without its ending
     */
    public byte[] labels(List<Label> labels, String kind, LabelSheet sheet) {
        List<List<Map<String, Object>>> pages = new ArrayList<>();
        int place = sheet.start() - 1;
        for (Label label : labels) {
            if (pages.isEmpty() || place == sheet.places()) {
                place = pages.isEmpty() ? place : 0;
                pages.add(new ArrayList<>());
            }
            pages.get(pages.size() - 1).add(placed(label, sheet, place++));
        }
        Map<String, Object> model = new LinkedHashMap<>();
        model.put("pages", pages);
        model.put("kind", kind);
        model.put("single", sheet.isSingle());
        return drawn("labels/sheet.ftlh", model, "Labels", page(sheet.page()));
    }

    private static Map<String, Object> placed(Label label, LabelSheet sheet, int place) {
        Map<String, Object> all = new LinkedHashMap<>(TemplateModel.of(label));
        LabelSheet.Extent corner = sheet.corner(place);
        all.put("left", length(corner.wide()));
        all.put("top", length(corner.high()));
        all.put("width", length(sheet.size().wide()));
        all.put("height", length(sheet.size().high()));
        all.put("mark", ScanMark.picture(label.job()));
        return all;
    }

    /** Envelopes as a PDF, a page a letter. */
    public byte[] envelopes(List<Letter> letters, Envelope form) {
        Map<String, Object> model = new LinkedHashMap<>();
        model.put("letters", letters.stream().map(TemplateModel::of).toList());
        model.put("sender", TemplateModel.of(new Letter("", firm.name(), "", firm.address())));
        model.put("form", form.word());
        LabelSheet.Extent size = new LabelSheet.Extent(form.width * 10, form.height * 10);
        return drawn("envelope/default.ftlh", model, "Envelopes", page(size));
    }

    private byte[] drawn(String template, Map<String, Object> model, String title, String page) {
        return OwnPage.of(
                folder,
                template,
                new PrintableText(Typeface.shared()).clean(model),
                page,
                new Imprint(
                        title,
                        firm.name(),
                        new BatchInfo(title, "", today, version),
                        Conformance.BOTH));
    }

    private static String page(LabelSheet.Extent size) {
        return "\n@page { size: "
                + length(size.wide())
                + " "
                + length(size.high())
                + "; margin: 0; @top-left { content: none; } @bottom-left { content: none; } }";
    }

    private static String length(int tenths) {
        return TENTHS.formatted(tenths / 10, tenths % 10);
    }
}
