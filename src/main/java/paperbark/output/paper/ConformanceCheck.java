package paperbark.output.paper;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;

/**
 * Whether foreign pages are fit for the claims of a pack. Knows a small set of things that are sure
 * to be fit; a page with anything else is called unfit, although a few of those would pass too. A
 * claim left out does no harm, and a false one does.
 */
final class ConformanceCheck {
    private static final Set<String> OPERATORS =
            new HashSet<>(
                    Arrays.asList(
                            ("q Q cm w J j M d gs re m l c v y h S s f F f* B B* b b* n W W* rg RG g G"
                                            + " cs CS sc SC scn SCN"
                                            + " Do BT ET Tf Tc Tw Tz TL Tr Ts Td TD Tm T* Tj TJ '"
                                            + " \" BMC BDC EMC MP DP")
                                    .split(" ")));
    private static final Set<COSName> COLOURS = Set.of(COSName.DEVICEGRAY, COSName.DEVICERGB);
    // Those that need no entry among the resources, where only plain ones may stand.
    private static final Set<COSName> OTHER_COLOURS = Set.of(COSName.DEVICECMYK, COSName.PATTERN);
    private static final Set<COSName> FILTERS = Set.of(COSName.FLATE_DECODE, COSName.DCT_DECODE);
    private static final Set<String> STATES =
            Set.of("Type", "LW", "LC", "LJ", "ML", "D", "CA", "ca");
    private static final Set<String> RESOURCES =
            Set.of("Font", "XObject", "ExtGState", "ProcSet", "ColorSpace");

    // ISO 19005-2, 6.1.13 allows 28, and the pack adds some of its own.
    private static final int DEEPEST = 20;

    private final Set<COSDictionary> seen = new HashSet<>();
    private boolean readable = true;
    private boolean lasting = true;

    private ConformanceCheck() {}

    /** What a pack with these pages may claim. */
    static Conformance of(List<PDPage> pages) {
        ConformanceCheck check = new ConformanceCheck();
        try {
            for (PDPage page : pages) {
                check.check(page);
            }
        } catch (IOException | RuntimeException e) {
            // Damaged: whatever it is, it is not known to be fit.
            return new Conformance(false, false);
        }
        return new Conformance(check.readable, check.readable && check.lasting);
    }

    private void check(PDPage page) throws IOException {
        content(new PDFStreamParser(page).parse());
        resources(page.getResources());
        for (PDAnnotation annotation : page.getAnnotations()) {
            // Whoever fills in a field changes the paper, so it is not one for the archive yet.
            lasting = false;
            readable &= annotation instanceof PDAnnotationWidget;
            if (annotation.getNormalAppearanceStream() != null) {
                resources(annotation.getNormalAppearanceStream().getResources());
            }
        }
    }

    private void content(List<Object> tokens) {
        int depth = 0;
        Object before = tokens;
        for (Object token : tokens) {
            if (token instanceof Operator operator) {
                String name = operator.getName();
                lasting &= OPERATORS.contains(name);
                lasting &= !name.equalsIgnoreCase("cs") || !OTHER_COLOURS.contains(before);
                depth += name.equals("q") ? 1 : 0;
                depth -= name.equals("Q") ? 1 : 0;
                lasting &= depth >= 0 && depth <= DEEPEST;
            }
            before = token;
        }
        lasting &= depth == 0;
    }

    private void resources(PDResources resources) throws IOException {
        if (resources == null || !seen.add(resources.getCOSObject())) {
            return;
        }
        resources.getCOSObject().keySet().forEach(k -> lasting &= RESOURCES.contains(k.getName()));
        for (COSName name : resources.getFontNames()) {
            if (isNew(resources, COSName.FONT, name)) {
                font(resources.getFont(name));
            }
        }
        for (COSName name : resources.getColorSpaceNames()) {
            lasting &= isPlain(resources.getCOSObject().getCOSDictionary(COSName.COLORSPACE), name);
        }
        for (COSName name : resources.getExtGStateNames()) {
            resources
                    .getExtGState(name)
                    .getCOSObject()
                    .keySet()
                    .forEach(k -> lasting &= STATES.contains(k.getName()));
        }
        for (COSName name : resources.getXObjectNames()) {
            if (isNew(resources, COSName.XOBJECT, name)) {
                drawn(resources.getXObject(name));
            }
        }
    }

    /** Asked before the library makes something of it: the fields of a form share their font. */
    private boolean isNew(PDResources resources, COSName kind, COSName name) {
        COSDictionary all = resources.getCOSObject().getCOSDictionary(kind);
        return all == null
                || !(all.getDictionaryObject(name) instanceof COSDictionary one)
                || seen.add(one);
    }

    private static boolean isPlain(COSDictionary colours, COSName name) {
        return COLOURS.contains(colours.getDictionaryObject(name));
    }

    /** Embedded, and with the letters that its signs stand for. */
    private void font(PDFont font) {
        readable &=
                font instanceof PDType0Font
                        && font.isEmbedded()
                        && font.getCOSObject().containsKey(COSName.TO_UNICODE)
                        && COSName.IDENTITY_H.equals(
                                font.getCOSObject().getDictionaryObject(COSName.ENCODING));
    }

    private void drawn(PDXObject object) throws IOException {
        lasting &= hasPlainFilters(object.getCOSObject());
        if (object instanceof PDFormXObject form) {
            lasting &=
                    !holdsAny(form.getCOSObject(), "OPI", "PS", "Subtype2", "Ref", "Group", "OC");
            content(new PDFStreamParser(form).parse());
            resources(form.getResources());
        } else if (object instanceof PDImageXObject image) {
            COSStream stream = image.getCOSObject();
            lasting &= !holdsAny(stream, "OPI", "Alternates", "OC", "SMask", "Mask", "Decode");
            lasting &= !image.getInterpolate() && image.getBitsPerComponent() == 8;
            lasting &= COLOURS.contains(stream.getDictionaryObject(COSName.COLORSPACE));
        } else {
            lasting = false;
        }
    }

    private static boolean holdsAny(COSDictionary dictionary, String... names) {
        return Arrays.stream(names).anyMatch(dictionary::containsKey);
    }

    private static boolean hasPlainFilters(COSStream stream) {
        COSBase filters = stream.getFilters();
        if (filters instanceof COSArray several) {
            return several.toList().stream().allMatch(FILTERS::contains);
        }
        return filters == null || FILTERS.contains(filters);
    }
}
