package paperbark.scan;

/**
 * A picture of a page by how dark it is against its paper, so that a scan and a drawing can be held
 * against each other.
 *
 * @param width pixels a line
 * @param height lines
 * @param pixels line by line, 0 paper to 255 black; not to be changed
 */
record Darkness(int width, int height, byte[] pixels) {

    /** Of a scan or a drawing, against whatever shade its paper has. */
    static Darkness of(Grey page) {
        int paper = page.quantile(700);
        int black = Math.min(page.quantile(5), paper - 60);
        byte[] pixels = new byte[page.width() * page.height()];
        for (int i = 0; i < pixels.length; i++) {
            int under = (paper - (page.pixels()[i] & 0xff)) * 255 / Math.max(1, paper - black);
            pixels[i] = (byte) Math.max(0, Math.min(255, under));
        }
        return new Darkness(page.width(), page.height(), pixels);
    }

    int at(int x, int y) {
        return x < 0 || y < 0 || x >= width || y >= height ? 0 : pixels[y * width + x] & 0xff;
    }

    /** Between four pixels. */
    int at(double x, double y) {
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        double right = x - left;
        double low = y - top;
        double upper = at(left, top) * (1 - right) + at(left + 1, top) * right;
        double lower = at(left, top + 1) * (1 - right) + at(left + 1, top + 1) * right;
        return (int) (upper * (1 - low) + lower * low);
    }

    /** Half as wide and high, each pixel the mean of four. */
    Darkness halved() {
        int w = width / 2;
        int h = height / 2;
        byte[] out = new byte[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int upper = at(2 * x, 2 * y) + at(2 * x + 1, 2 * y);
                int lower = at(2 * x, 2 * y + 1) + at(2 * x + 1, 2 * y + 1);
                out[y * w + x] = (byte) ((upper + lower) / 4);
            }
        }
        return new Darkness(w, h, out);
    }

    /** Each pixel the mean of nine, so that a thin line lies on its neighbours too. */
    Darkness blurred() {
        byte[] out = new byte[pixels.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int sum = 0;
                for (int dy = -1; dy <= 1; dy++) {
                    for (int dx = -1; dx <= 1; dx++) {
                        sum += at(x + dx, y + dy);
                    }
                }
                out[y * width + x] = (byte) (sum / 9);
            }
        }
        return new Darkness(width, height, out);
    }
}
