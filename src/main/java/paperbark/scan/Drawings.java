package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Printed pages as they are drawn, the last ones kept. A pack that cannot be drawn has none. */
final class Drawings {
    // A megabyte and a half each.
    private static final int KEPT = 40;

    private final PrintedForms printed;
    private final Map<String, Optional<Drawing>> kept =
            new LinkedHashMap<>(KEPT, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<String, Optional<Drawing>> eldest) {
                    return size() > KEPT;
                }
            };

    Drawings(PrintedForms printed) {
        this.printed = printed;
    }

    Optional<Drawing> of(PrintedPage page) throws IOException {
        String key = page.batch() + "/" + page.job() + "/" + page.packPage();
        Optional<Drawing> there = kept.get(key);
        if (there == null) {
            Optional<Path> pack = printed.pack(page);
            there = pack.isEmpty() ? Optional.empty() : drawn(pack.get(), page.packPage());
            kept.put(key, there);
        }
        return there;
    }

    private static Optional<Drawing> drawn(Path pack, int page) {
        try (PdfPile pile = new PdfPile(pack)) {
            return Optional.of(Drawing.of(pile.drawn(page, Drawing.DPI)));
        } catch (IOException | RuntimeException | StackOverflowError damaged) {
            // What it looked like nobody can say; its page is asked about.
            return Optional.empty();
        }
    }
}
