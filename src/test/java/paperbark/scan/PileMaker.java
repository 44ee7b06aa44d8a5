package paperbark.scan;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.DataBufferByte;
import java.awt.image.Kernel;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.CCITTFactory;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import paperbark.batch.PageMap;
import paperbark.output.paper.SignBox;

/**
 * Makes piles of scanned pages out of a print run: PDFBox draws the pages, random strokes sign
 * them, and they are harmed as scanners, people and coffee do. The same seed gives the same pile.
 */
final class PileMaker {
    private static final Pattern JOB = Pattern.compile("Job (SB-\\d+)");
    private static final Pattern PAGE = Pattern.compile("Page (\\d+) of \\d+ of the pack");

    private final PDDocument run;
    private final PDFRenderer renderer;
    private final PageMap map;
    private final Random random;

    /** What a page really is, as its printed text says; a page without text is an empty back. */
    record Truth(String job, int packPage, Set<SignBox> blank, Set<SignBox> signed, String how) {
        boolean isEmpty() {
            return job.isEmpty();
        }
    }

    /** How a page is harmed. */
    record Harm(
            int dpi,
            double degrees,
            boolean upsideDown,
            double noise,
            int blur,
            boolean stamp,
            boolean coffee,
            boolean twoTone) {}

    PileMaker(PDDocument run, PageMap map, long seed) {
        this.run = run;
        this.renderer = new PDFRenderer(run);
        this.map = map;
        this.random = new Random(seed);
    }

    /** Harm by chance, down to so many dots an inch. */
    Harm anyHarm(int... resolutions) {
        return new Harm(
                resolutions[random.nextInt(resolutions.length)],
                random.nextDouble() * 10 - 5,
                random.nextInt(10) == 0,
                random.nextDouble() * 14,
                random.nextInt(3) == 0 ? 1 : 0,
                random.nextInt(10) == 0,
                random.nextInt(7) == 0,
                random.nextInt(3) == 0);
    }

    /**
     * What the print run's own text says that a page is. On a buyer's form, which has no such text,
     * it is so many pages behind the last that says it.
     */
    private Truth truth(int page, BufferedImage drawn) throws IOException {
        if (PageLook.isEmpty(Grey.of(drawn))) {
            return new Truth("", 0, Set.of(), Set.of(), "");
        }
        for (int before = page; before > 0; before--) {
            Truth told = told(before);
            if (!told.isEmpty()) {
                int number = told.packPage() + page - before;
                return new Truth(told.job(), number, Set.of(), Set.of(), "");
            }
        }
        throw new IllegalStateException("no page of the run tells what it is");
    }

    private Truth told(int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        // What all pages say alike is drawn before what is the page's own.
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        String text = stripper.getText(run);
        Matcher job = JOB.matcher(text);
        Matcher number = PAGE.matcher(text);
        return job.find() && number.find()
                ? new Truth(job.group(1), Integer.parseInt(number.group(1)), Set.of(), Set.of(), "")
                : new Truth("", 0, Set.of(), Set.of(), "");
    }

    /** Adds a page to a pile, signed in nine boxes of ten, and says what it is. */
    Truth add(PDDocument pile, int page, Harm harm) throws IOException {
        BufferedImage image = renderer.renderImageWithDPI(page - 1, harm.dpi(), ImageType.GRAY);
        Truth truth = truth(page, image);
        Set<SignBox> blank = new HashSet<>();
        Set<SignBox> signed = new HashSet<>();
        for (SignBox box : boxes(truth)) {
            if (random.nextInt(10) == 0) {
                blank.add(box);
            } else {
                sign(image, box, harm.dpi());
                signed.add(box);
            }
        }
        if (boxes(truth).isEmpty() && !truth.isEmpty()) {
            scribble(image, harm.dpi());
        }
        put(pile, harmed(image, harm), harm);
        return new Truth(truth.job(), truth.packPage(), blank, signed, harm.toString());
    }

    private List<SignBox> boxes(Truth truth) {
        return paper(truth).stream()
                .flatMap(p -> p.boxes().stream())
                .filter(b -> b.packPage() == truth.packPage())
                .toList();
    }

    private void sign(BufferedImage image, SignBox box, int dpi) {
        Graphics2D pen = smooth(image);
        double scale = dpi / 254.0;
        pen.setColor(new Color(grey(20, 90), grey(20, 90), grey(20, 90)));
        pen.setStroke(
                new BasicStroke(
                        (float) ((3 + random.nextDouble() * 4) * scale),
                        BasicStroke.CAP_ROUND,
                        BasicStroke.JOIN_ROUND));
        boolean day = box.what().startsWith("Date");
        int strokes = day ? 6 : 3 + random.nextInt(5);
        double width = box.width() * (0.4 + random.nextDouble() * 0.4);
        double x = box.left() + box.width() * (0.05 + random.nextDouble() * 0.1);
        for (int i = 0; i < strokes; i++) {
            Path2D stroke = new Path2D.Double();
            double step = width / strokes;
            stroke.moveTo(x * scale, within(box) * scale);
            stroke.curveTo(
                    (x + step * random.nextDouble()) * scale,
                    within(box) * scale,
                    (x + step * random.nextDouble()) * scale,
                    within(box) * scale,
                    (x + step) * scale,
                    within(box) * scale);
            pen.draw(stroke);
            x += step;
        }
        pen.dispose();
    }

    /** A name and a signature somewhere on a page that has no boxes of ours. */
    private void scribble(BufferedImage image, int dpi) {
        for (int i = 0; i < 2; i++) {
            int left = 200 + random.nextInt(1200);
            int top = 1200 + random.nextInt(1400);
            sign(image, new SignBox(1, "Owner", "Signature", left, top, 500, 120), dpi);
        }
    }

    private double within(SignBox box) {
        return box.top() + box.height() * (0.2 + random.nextDouble() * 0.6);
    }

    private int grey(int from, int to) {
        return from + random.nextInt(to - from);
    }

    private static Graphics2D smooth(BufferedImage image) {
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        return pen;
    }

    private BufferedImage harmed(BufferedImage page, Harm harm) {
        if (harm.stamp()) {
            stamp(page, harm.dpi());
        }
        BufferedImage image = turned(page, harm);
        if (harm.blur() > 0) {
            float[] box = new float[9];
            Arrays.fill(box, 1f / 9);
            image =
                    new ConvolveOp(new Kernel(3, 3, box), ConvolveOp.EDGE_NO_OP, null)
                            .filter(image, null);
        }
        byte[] pixels = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        int paper = harm.coffee() ? grey(165, 205) : 250;
        double[] noise = new double[4096];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = random.nextGaussian() * harm.noise();
        }
        int at = random.nextInt(noise.length);
        for (int i = 0; i < pixels.length; i++) {
            at = (at * 5 + 1 + (i & 7)) & 4095;
            double value = (pixels[i] & 0xff) * paper / 255.0 + noise[at];
            pixels[i] = (byte) Math.max(0, Math.min(255, value));
        }
        return harm.twoTone() ? twoTone(image, paper) : image;
    }

    /** A grey ink stamp that lies over the mark in part or whole. */
    private void stamp(BufferedImage page, int dpi) {
        Graphics2D pen = smooth(page);
        double scale = dpi / 254.0;
        pen.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, 0.55f));
        pen.setColor(new Color(120, 120, 120));
        pen.translate(
                (1700 + random.nextDouble() * 180) * scale,
                (60 + random.nextDouble() * 140) * scale);
        pen.rotate(Math.toRadians(random.nextDouble() * 40 - 20));
        pen.scale(scale, scale);
        pen.setStroke(new BasicStroke(9));
        pen.drawRect(0, 0, 400, 110);
        pen.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 90));
        pen.drawString("RECEIVED", 15, 85);
        pen.dispose();
    }

    private static BufferedImage turned(BufferedImage page, Harm harm) {
        BufferedImage turned =
                new BufferedImage(page.getWidth(), page.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D pen = smooth(turned);
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, turned.getWidth(), turned.getHeight());
        double radians = Math.toRadians(harm.degrees() + (harm.upsideDown() ? 180 : 0));
        pen.drawImage(
                page,
                AffineTransform.getRotateInstance(
                        radians, page.getWidth() / 2.0, page.getHeight() / 2.0),
                null);
        pen.dispose();
        return turned;
    }

    private static BufferedImage twoTone(BufferedImage grey, int paper) {
        BufferedImage image =
                new BufferedImage(
                        grey.getWidth(), grey.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
        int threshold = paper * 6 / 10;
        byte[] from = ((DataBufferByte) grey.getRaster().getDataBuffer()).getData();
        byte[] to = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        int stride = (grey.getWidth() + 7) / 8;
        for (int y = 0; y < grey.getHeight(); y++) {
            for (int x = 0; x < grey.getWidth(); x++) {
                if ((from[y * grey.getWidth() + x] & 0xff) > threshold) {
                    to[y * stride + x / 8] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        return image;
    }

    private static void put(PDDocument pile, BufferedImage image, Harm harm) throws IOException {
        PDImageXObject picture =
                harm.twoTone()
                        ? CCITTFactory.createFromImage(pile, image)
                        : JPEGFactory.createFromImage(pile, image, 0.4f, harm.dpi());
        PDPage page = new PDPage(PDRectangle.A4);
        pile.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(pile, page)) {
            PDRectangle all = PDRectangle.A4;
            out.drawImage(picture, 0, 0, all.getWidth(), all.getHeight());
        }
    }

    /** So many pages of the run by chance, in their order or not, each once. */
    List<Integer> some(int howMany) {
        List<Integer> all = new ArrayList<>();
        for (int i = 1; i <= run.getNumberOfPages(); i++) {
            all.add(i);
        }
        while (all.size() > howMany) {
            all.remove(random.nextInt(all.size()));
        }
        return all;
    }

    /** So many forms without a mark, each with the pages of its pack about it, if they came. */
    List<Integer> aboutForms(int howMany, boolean shuffled) throws IOException {
        List<Integer> forms = new ArrayList<>();
        List<Truth> all = new ArrayList<>(List.of(new Truth("", 0, Set.of(), Set.of(), "")));
        for (int page = 1; page <= run.getNumberOfPages(); page++) {
            Truth told = told(page);
            Truth before = all.get(page - 1);
            all.add(
                    told.isEmpty()
                            ? new Truth(before.job(), before.packPage() + 1, Set.of(), Set.of(), "")
                            : told);
            if (paper(all.get(page)).filter(PageMap.PaperSpan::unmarked).isPresent()) {
                forms.add(page);
            }
        }
        Collections.shuffle(forms, random);
        Set<Integer> pages = new TreeSet<>();
        for (int form : forms.subList(0, Math.min(howMany, forms.size()))) {
            pages.add(form);
            for (int near = form - 2; near <= form + 2; near += 4) {
                if (random.nextInt(4) > 0 && paper(all.get(near)).isPresent()) {
                    pages.add(near);
                }
            }
        }
        List<Integer> pile = new ArrayList<>(pages);
        if (shuffled) {
            Collections.shuffle(pile, random);
        }
        return pile;
    }

    private Optional<PageMap.PaperSpan> paper(Truth truth) {
        return map.of(truth.job()).flatMap(job -> job.at(truth.packPage()));
    }
}
