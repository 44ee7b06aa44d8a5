package paperbark.output.pdf;

import java.io.IOException;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.ICOSVisitor;

/** A reference to the object with a number, where the object itself is not at hand. */
final class Ref extends COSBase {
    private final int number;

    Ref(int number) {
        this.number = number;
    }

    /** The object's number, at least 1. */
    int number() {
        return number;
    }

    @Override
    public void accept(ICOSVisitor visitor) throws IOException {
        throw new UnsupportedOperationException("a reference is written by its number");
    }
}
