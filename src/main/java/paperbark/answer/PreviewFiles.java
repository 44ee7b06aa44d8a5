package paperbark.answer;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import paperbark.disk.Disk;
import paperbark.output.paper.Excerpt;

/** Writes a preview where somebody looks at it. */
public final class PreviewFiles {
    private PreviewFiles() {}

    /**
     * Writes the paper as a PDF or as a picture a page, in place of earlier ones of the name.
     *
     * @param out the file; with pictures the page's number comes before its ending
     * @return the files
     * @throws IOException when one cannot be written
     */
    public static List<Path> write(Preview.Rendered rendered, Path out, boolean pictures)
            throws IOException {
        if (!pictures) {
            Disk.replace(out, rendered.pdf());
            return List.of(out);
        }
        String base = out.getFileName().toString().replaceAll("(?i)\\.(png|pdf)$", "");
        List<Path> files = new ArrayList<>();
        for (byte[] picture : Excerpt.pictures(rendered.pdf())) {
            Path file = out.resolveSibling(base + "-" + (files.size() + 1) + ".png");
            Disk.replace(file, picture);
            files.add(file);
        }
        return files;
    }
}
