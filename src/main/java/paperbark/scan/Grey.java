package paperbark.scan;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;

/**
 * A picture in shades of grey.
 *
 * @param width pixels a line
 * @param height lines
 * @param pixels line by line, 0 black to 255 white; not to be changed
 */
record Grey(int width, int height, byte[] pixels) {

    /** The shade of a pixel; white beyond the edges. */
    int at(int x, int y) {
        return x < 0 || y < 0 || x >= width || y >= height ? 255 : pixels[y * width + x] & 0xff;
    }

    /** The first band of a raster of bytes: the brightness, where colours are stored so. */
    static Grey ofFirstBand(Raster raster) {
        int width = raster.getWidth();
        int height = raster.getHeight();
        int bands = raster.getNumBands();
        byte[] all = ((DataBufferByte) raster.getDataBuffer()).getData();
        if (bands == 1 && all.length == width * height) {
            return new Grey(width, height, all);
        }
        byte[] grey = new byte[width * height];
        int[] line = new int[width];
        for (int y = 0; y < height; y++) {
            raster.getSamples(0, y, width, 1, 0, line);
            for (int x = 0; x < width; x++) {
                grey[y * width + x] = (byte) line[x];
            }
        }
        return new Grey(width, height, grey);
    }

    /** Any picture. */
    static Grey of(BufferedImage image) {
        if (image.getType() == BufferedImage.TYPE_BYTE_GRAY
                && image.getRaster().getDataBuffer() instanceof DataBufferByte) {
            return ofFirstBand(image.getRaster());
        }
        int width = image.getWidth();
        int height = image.getHeight();
        byte[] grey = new byte[width * height];
        int[] line = new int[width];
        boolean twoTone = image.getSampleModel().getSampleSize(0) == 1;
        boolean inverted =
                twoTone && (image.getRGB(0, 0) & 1) == image.getRaster().getSample(0, 0, 0);
        for (int y = 0; y < height; y++) {
            if (twoTone
                    && image.getRaster().getDataBuffer().getDataType() == DataBuffer.TYPE_BYTE) {
                image.getRaster().getSamples(0, y, width, 1, 0, line);
                for (int x = 0; x < width; x++) {
                    grey[y * width + x] = (byte) ((line[x] == 1) == inverted ? 255 : 0);
                }
                continue;
            }
            image.getRGB(0, y, width, 1, line, 0, width);
            for (int x = 0; x < width; x++) {
                int c = line[x];
                grey[y * width + x] =
                        (byte)
                                (((c >> 16 & 0xff) * 77 + (c >> 8 & 0xff) * 151 + (c & 0xff) * 28)
                                        >> 8);
            }
        }
        return new Grey(width, height, grey);
    }

    /** The same picture with each square of so many pixels as one, their mean. */
    Grey reduced(int by) {
        if (by <= 1) {
            return this;
        }
        int w = width / by;
        int h = height / by;
        byte[] out = new byte[w * h];
        int[] sums = new int[w];
        for (int y = 0; y < h; y++) {
            java.util.Arrays.fill(sums, 0);
            for (int dy = 0; dy < by; dy++) {
                int from = (y * by + dy) * width;
                for (int x = 0; x < w; x++) {
                    for (int dx = 0; dx < by; dx++) {
                        sums[x] += pixels[from++] & 0xff;
                    }
                }
            }
            for (int x = 0; x < w; x++) {
                out[y * w + x] = (byte) (sums[x] / (by * by));
            }
        }
        return new Grey(w, h, out);
    }

    /** Everything lighter than a shade is white; so a grey stamp over black print goes. */
    Grey darkOnly(int lightest) {
        byte[] out = new byte[pixels.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (pixels[i] & 0xff) > lightest ? (byte) 255 : pixels[i];
        }
        return new Grey(width, height, out);
    }

    /** A part of the picture, as far as it lies within. */
    Grey part(int left, int top, int w, int h) {
        int l = Math.max(0, Math.min(left, width - 1));
        int t = Math.max(0, Math.min(top, height - 1));
        int pw = Math.max(1, Math.min(w, width - l));
        int ph = Math.max(1, Math.min(h, height - t));
        byte[] out = new byte[pw * ph];
        for (int y = 0; y < ph; y++) {
            System.arraycopy(pixels, (t + y) * width + l, out, y * pw, pw);
        }
        return new Grey(pw, ph, out);
    }

    /** The shade that so many of a thousand pixels are no lighter than, of every few pixels. */
    int quantile(int ofThousand) {
        int[] counts = new int[256];
        int step = Math.max(1, pixels.length / 20_000);
        int n = 0;
        for (int i = 0; i < pixels.length; i += step) {
            counts[pixels[i] & 0xff]++;
            n++;
        }
        long wanted = (long) n * ofThousand / 1000;
        long so = 0;
        for (int shade = 0; shade < 256; shade++) {
            so += counts[shade];
            if (so > wanted) {
                return shade;
            }
        }
        return 255;
    }

    /** As an image, for files. */
    BufferedImage image() {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setDataElements(0, 0, width, height, pixels);
        return image;
    }
}
