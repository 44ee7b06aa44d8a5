package paperbark.output.form;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.filter.DecodeOptions;
import org.apache.pdfbox.filter.FilterFactory;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;

/**
 * How much a form unpacks to, found out without keeping it: a megabyte may hold a gigabyte, which
 * the library would take into memory at once.
 */
final class Unpacking {
    // The largest part of a form is a font of a few megabytes.
    private static final long MOST_OF_A_PART = 30_000_000;
    private static final long MOST_OF_ALL = 150_000_000;

    // A dense page has some hundred kilobytes of drawing; each step of it becomes an object.
    private static final long MOST_OF_A_PAGE = 5_000_000;

    private static final byte[] BEGIN = "stream".getBytes(StandardCharsets.US_ASCII);

    /** Filters that pack pictures, which stay packed. */
    private static final Set<COSName> PICTURES =
            Set.of(
                    COSName.DCT_DECODE,
                    COSName.JPX_DECODE,
                    COSName.JBIG2_DECODE,
                    COSName.CCITTFAX_DECODE);

    private Unpacking() {}

    /**
     * Refuses a file of which one part, or all together, unpack to too much. Looks at the bytes
     * alone, because the library unpacks some parts to find the others.
     */
    static void check(String file, byte[] pdf) throws UnusableForm {
        Inflater inflater = new Inflater();
        byte[] some = new byte[64 * 1024];
        long all = 0;
        try {
            for (int at = next(pdf, 0); at >= 0; at = next(pdf, at)) {
                inflater.reset();
                inflater.setInput(pdf, at, pdf.length - at);
                long part = inflated(inflater, some);
                all += part;
                refuse(file, part, all);
            }
        } finally {
            inflater.end();
        }
    }

    private static long inflated(Inflater inflater, byte[] some) {
        long part = 0;
        try {
            int n = inflater.inflate(some);
            while (n > 0 && part <= MOST_OF_A_PART) {
                part += n;
                n = inflater.inflate(some);
            }
        } catch (DataFormatException e) {
            // Damaged or something else: what came out so far is what a reader gets.
        }
        return part;
    }

    private static int next(byte[] pdf, int from) {
        for (int i = from; i + BEGIN.length + 3 < pdf.length; i++) {
            int at = i + BEGIN.length;
            if (pdf[i] == 's' && starts(pdf, i)) {
                at += pdf[at] == '\r' ? 1 : 0;
                at += pdf[at] == '\n' ? 1 : 0;
                if (isDeflated(pdf, at)) {
                    return at;
                }
            }
        }
        return -1;
    }

    private static boolean starts(byte[] pdf, int at) {
        for (int i = 0; i < BEGIN.length; i++) {
            if (pdf[at + i] != BEGIN[i]) {
                return false;
            }
        }
        return true;
    }

    /** RFC 1950: deflated, and the first two bytes are a multiple of 31. */
    private static boolean isDeflated(byte[] pdf, int at) {
        int first = pdf[at] & 0xFF;
        int second = pdf[at + 1] & 0xFF;
        return (first & 0x0F) == 8 && (first * 256 + second) % 31 == 0;
    }

    /** The same for parts that are packed in another way, or more than once. */
    static void check(String file, PDDocument document) throws UnusableForm {
        long all = 0;
        for (COSObjectKey key : List.copyOf(document.getDocument().getXrefTable().keySet())) {
            COSObject object = document.getDocument().getObjectFromPool(key);
            COSBase base = object == null ? null : object.getObject();
            if (base instanceof COSStream stream && !isSimple(stream.getFilters())) {
                long part = unpacked(stream);
                all += part;
                refuse(file, part, all);
            }
        }
        for (PDPage page : document.getPages()) {
            refusePage(file, page);
        }
    }

    private static void refusePage(String file, PDPage page) throws UnusableForm {
        long drawn = 0;
        byte[] some = new byte[64 * 1024];
        // The same stream may be drawn a thousand times.
        for (Iterator<PDStream> parts = page.getContentStreams(); parts.hasNext(); ) {
            try (InputStream in = parts.next().createInputStream()) {
                for (int n = in.read(some); n > 0; n = in.read(some)) {
                    drawn += n;
                }
            } catch (IOException e) {
                // Damaged: whoever draws it will say so.
            }
            if (drawn > MOST_OF_A_PAGE) {
                throw tooMuch(file, "A page of the form", MOST_OF_A_PAGE);
            }
        }
    }

    private static boolean isSimple(COSBase filters) {
        return filters == null || COSName.FLATE_DECODE.equals(filters);
    }

    private static List<COSName> names(COSBase filters) {
        return filters instanceof COSArray several
                ? several.toList().stream()
                        .filter(COSName.class::isInstance)
                        .map(COSName.class::cast)
                        .toList()
                : filters instanceof COSName one ? List.of(one) : List.of();
    }

    private static long unpacked(COSStream stream) {
        byte[] now;
        try (InputStream raw = stream.createRawInputStream()) {
            now = raw.readAllBytes();
            long most = now.length;
            int index = 0;
            for (COSName filter : names(stream.getFilters())) {
                if (PICTURES.contains(filter)) {
                    break;
                }
                Counted out = new Counted();
                FilterFactory.INSTANCE
                        .getFilter(filter)
                        .decode(
                                new ByteArrayInputStream(now),
                                out,
                                stream,
                                index++,
                                DecodeOptions.DEFAULT);
                now = out.all.toByteArray();
                most = Math.max(most, now.length);
            }
            return most;
        } catch (TooMuch e) {
            return MOST_OF_A_PART + 1;
        } catch (IOException | RuntimeException e) {
            // Damaged: whoever needs the part will say so.
            return 0;
        }
    }

    private static void refuse(String file, long part, long all) throws UnusableForm {
        if (part > MOST_OF_A_PART) {
            throw tooMuch(file, "A part of the form", MOST_OF_A_PART);
        }
        if (all > MOST_OF_ALL) {
            throw tooMuch(file, "The form", MOST_OF_ALL);
        }
    }

    private static UnusableForm tooMuch(String file, String what, long most) {
        return UnusableForm.because(
                file,
                String.format(
                        Locale.ROOT,
                        "%s unpacks to more than %,d bytes, as in no form.",
                        what,
                        most),
                "Open it in a PDF reader and print it to a new PDF, or ask the buyer for it again.");
    }

    /** A part has become too long. */
    private static final class TooMuch extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    private static final class Counted extends OutputStream {
        private final ByteArrayOutputStream all = new ByteArrayOutputStream();

        @Override
        public void write(int b) {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) {
            if (all.size() + count > MOST_OF_A_PART) {
                throw new TooMuch();
            }
            all.write(bytes, from, count);
        }
    }
}
