package paperbark.output.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/** Streams of a document. */
final class Streams {
    static final byte[] SAVE = "q\n".getBytes(StandardCharsets.US_ASCII);
    static final byte[] RESTORE = "\nQ\n".getBytes(StandardCharsets.US_ASCII);

    private Streams() {}

    /** A stream with this content. */
    static COSStream of(byte[] content) throws IOException {
        return ofDeflated(Deflated.of(content));
    }

    /** A stream with content that is deflated already. */
    static COSStream ofDeflated(byte[] content) throws IOException {
        COSStream stream = new COSStream();
        stream.setItem(COSName.FILTER, COSName.FLATE_DECODE);
        try (OutputStream out = stream.createRawOutputStream()) {
            out.write(content);
        }
        return stream;
    }

    /** Draws content onto a page of which nobody knows in which state its own leaves it. */
    static void drawOver(COSDictionary page, byte[] content) throws IOException {
        COSBase own = page.getDictionaryObject(COSName.CONTENTS);
        COSArray all = new COSArray();
        all.add(of(SAVE));
        if (own instanceof COSArray parts) {
            all.addAll(parts);
        } else if (own != null) {
            all.add(own);
        }
        Buffer behind = new Buffer();
        behind.write(RESTORE, 0, RESTORE.length);
        behind.write(content, 0, content.length);
        all.add(of(behind.toByteArray()));
        page.setItem(COSName.CONTENTS, all);
    }
}
