package paperbark.output;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * Puts a visible box in place of every character that the typeface lacks or that cannot be seen
 * (control and direction characters), so that nothing vanishes from paper unnoticed. Remembers the
 * texts it had to change.
 */
public final class PrintableText {
    /** What stands in place of a character that cannot be printed. */
    public static final char SUBSTITUTE = '\u25A1';

    // These repeat what the job says; one finding a text is enough.
    private static final Set<String> ECHOES = Set.of("findings", "papers", "toDo", "origin");

    private final Typeface typeface;
    private final Set<String> changed = new TreeSet<>();

    /** With nothing changed so far. */
    public PrintableText(Typeface typeface) {
        this.typeface = typeface;
    }

    /** The texts that had characters replaced, as they were, sorted. */
    public Set<String> changed() {
        return changed;
    }

    /** The same data with printable texts only; what has them anyway is not copied. */
    public Map<String, Object> clean(Map<String, Object> model) {
        return clean(model, true);
    }

    private Map<String, Object> clean(Map<String, Object> entries, boolean remember) {
        Map<String, Object> changes = new HashMap<>();
        entries.forEach(
                (name, item) -> {
                    Object clean = clean(item, remember && !ECHOES.contains(name));
                    if (clean != item) {
                        changes.put(name, clean);
                    }
                });
        if (changes.isEmpty()) {
            return entries;
        }
        Map<String, Object> clean = TemplateModel.emptyLike(entries);
        entries.forEach((name, item) -> clean.put(name, changes.getOrDefault(name, item)));
        return clean;
    }

    // The keys of a model are names.
    @SuppressWarnings("unchecked")
    private Object clean(Object value, boolean remember) {
        if (value instanceof String text) {
            return clean(text, remember);
        }
        if (value instanceof List<?> items) {
            return clean(items, remember);
        }
        return value instanceof Map<?, ?> entries
                ? clean((Map<String, Object>) entries, remember)
                : value;
    }

    private List<?> clean(List<?> items, boolean remember) {
        List<Object> clean = new ArrayList<>(items.size());
        boolean changes = false;
        for (Object item : items) {
            Object one = clean(item, remember);
            changes |= one != item;
            clean.add(one);
        }
        return changes ? Collections.unmodifiableList(clean) : items;
    }

    /** The text with boxes in place of what cannot be printed. */
    public String clean(String text) {
        return clean(text, true);
    }

    private String clean(String text, boolean remember) {
        if (isPrinted(text)) {
            return text;
        }
        if (remember) {
            changed.add(text);
        }
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> out.appendCodePoint(prints(c) ? c : SUBSTITUTE));
        return out.toString();
    }

    /** Cleans what stands in markup, after the data are clean: the template's own words. */
    public void clean(Node node) {
        if (node instanceof Text text) {
            String clean = clean(text.getData(), true);
            if (!clean.equals(text.getData())) {
                text.setData(clean);
            }
        }
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            clean(child);
        }
    }

    private boolean isPrinted(String text) {
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            if (!prints(c)) {
                return false;
            }
            i += Character.charCount(c);
        }
        return true;
    }

    private boolean prints(int c) {
        if (c == '\n' || c == '\r' || c == '\t') {
            return true;
        }
        return c >= ' '
                && !Character.isISOControl(c)
                && Character.getType(c) != Character.FORMAT
                && typeface.prints(c);
    }
}
