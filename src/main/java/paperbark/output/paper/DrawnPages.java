package paperbark.output.paper;

import com.openhtmltopdf.pdfboxout.PageSupplier;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * The pages that a layout draws. Their marks are named one after the other: the library looks
 * through all marks of a page whenever another is made.
 */
final class DrawnPages implements PageSupplier {
    // Most pages have fewer marks.
    private static final List<COSName> NAMES =
            IntStream.range(0, 500).mapToObj(Marks::named).toList();

    @Override
    public PDPage requestPage(
            PDDocument document, float width, float height, int number, int behind) {
        PDPage page = new PDPage(new PDRectangle(width, height));
        document.addPage(page);
        COSDictionary resources = new COSDictionary();
        resources.setItem(COSName.PROPERTIES, new Marks());
        page.setResources(new PDResources(resources));
        return page;
    }

    /** What is said of the marks of a page; each is taken in as soon as its name is asked for. */
    private static final class Marks extends COSDictionary {
        private static COSName named(int number) {
            return COSName.getPDFName("M" + number);
        }

        @Override
        public boolean containsValue(Object mark) {
            return true;
        }

        @Override
        public COSName getKeyForValue(Object mark) {
            int number = size();
            COSName name = number < NAMES.size() ? NAMES.get(number) : named(number);
            setItem(name, (COSBase) mark);
            return name;
        }
    }
}
