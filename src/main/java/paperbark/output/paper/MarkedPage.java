package paperbark.output.paper;

import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** A page with many marks, on which each is named without looking for it among the others. */
final class MarkedPage extends PDPage {

    /**
     * An empty page.
     *
     * @param width in points
     * @param height in points
     */
    MarkedPage(float width, float height) {
        super(new PDRectangle(width, height));
    }

    @Override
    public PDResources getResources() {
        if (!getCOSObject().containsKey(COSName.RESOURCES)) {
            COSDictionary resources = new COSDictionary();
            resources.setItem(COSName.PROPERTIES, new Marks());
            setResources(new PDResources(resources));
        }
        return super.getResources();
    }

    private static final class Marks extends COSDictionary {
        // The library asks this of each before it gives it a name. No mark is used twice.
        @Override
        public boolean containsValue(Object value) {
            return false;
        }
    }
}
