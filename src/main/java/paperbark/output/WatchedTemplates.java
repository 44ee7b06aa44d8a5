package paperbark.output;

import freemarker.cache.TemplateLoader;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Reads templates, refuses those that use a dangerous word, and remembers the checksum of each that
 * was used. It stands before every file, so that a part which another template imports is watched
 * too.
 */
final class WatchedTemplates implements TemplateLoader {
    // The shipped ones have up to ten kilobytes; what has a hundred times as much was put there by
    // mistake, and its text is in memory several times over.
    private static final int MOST_CHARACTERS = 1_000_000;

    private final TemplateLoader files;
    private final Map<String, String> used = new TreeMap<>();
    private final Map<String, String> ahead = new TreeMap<>();

    /** A file by the name under which it was asked for. */
    private record Found(String name, Object file) {}

    /** The template is not allowed, usually for a word in it; line and column count from 1. */
    static final class Forbidden extends IOException {
        private static final long serialVersionUID = 1L;
        private final String template;
        private final int line;
        private final int column;

        Forbidden(String template, int line, int column, String word) {
            this("The template uses " + word + ", which is not allowed.", template, line, column);
        }

        private Forbidden(String fact, String template, int line, int column) {
            super(fact);
            this.template = template;
            this.line = line;
            this.column = column;
        }

        private static Forbidden file(String template, String fact) {
            return new Forbidden(fact, template, 0, 0);
        }

        BrokenTemplate broken() {
            return new BrokenTemplate(template, line, column, getMessage());
        }
    }

    WatchedTemplates(TemplateLoader files) {
        this.files = files;
    }

    /** SHA-256 of every template read so far, by name, but for those read ahead of their use. */
    synchronized Map<String, String> used() {
        return new TreeMap<>(used);
    }

    /** Reads templates that may never be used; nobody else may ask for one meanwhile. */
    synchronized void readAhead(Runnable reading) {
        Map<String, String> before = new TreeMap<>(used);
        reading.run();
        ahead.putAll(used);
        used.clear();
        used.putAll(before);
    }

    /** From now on a template that was read ahead counts as used. */
    synchronized void use(String name) {
        String sha256 = ahead.remove(name);
        if (sha256 != null) {
            used.put(name, sha256);
        }
    }

    @Override
    public Object findTemplateSource(String name) throws IOException {
        Object file;
        try {
            file = files.findTemplateSource(name);
        } catch (SecurityException e) {
            throw Forbidden.file(name, "The file is a link that leads out of the template folder.");
        }
        return file == null ? null : new Found(name, file);
    }

    @Override
    public long getLastModified(Object found) {
        return files.getLastModified(((Found) found).file());
    }

    @Override
    public Reader getReader(Object found, String encoding) throws IOException {
        String name = ((Found) found).name();
        String text;
        try (Reader reader = files.getReader(((Found) found).file(), encoding)) {
            text = text(name, reader);
        }
        if (name.endsWith(".ftlh")) {
            ForbiddenWords.check(name, text);
        }
        synchronized (this) {
            used.put(name, DigestUtils.sha256Hex(text));
        }
        return new StringReader(text);
    }

    private static String text(String name, Reader reader) throws IOException {
        StringBuilder text = new StringBuilder();
        char[] some = new char[8192];
        for (int n = reader.read(some); n >= 0; n = reader.read(some)) {
            text.append(some, 0, n);
            if (text.length() > MOST_CHARACTERS) {
                throw Forbidden.file(
                        name,
                        String.format(
                                Locale.ROOT,
                                "The file has more than %,d characters.",
                                MOST_CHARACTERS));
            }
        }
        return text.toString();
    }

    @Override
    public void closeTemplateSource(Object found) throws IOException {
        files.closeTemplateSource(((Found) found).file());
    }
}
