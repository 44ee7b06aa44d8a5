package paperbark.output;

import freemarker.cache.TemplateLoader;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Reads templates, refuses those that use a dangerous word, and remembers the checksum of each that
 * was used. It stands before every file, so that a part which another template imports is watched
 * too.
 */
final class WatchedTemplates implements TemplateLoader {
    private final TemplateLoader files;
    private final Map<String, String> used = new TreeMap<>();

    /** A file by the name under which it was asked for. */
    private record Found(String name, Object file) {}

    /** The template has a word that is not allowed; line and column count from 1. */
    static final class Forbidden extends IOException {
        private static final long serialVersionUID = 1L;
        private final String template;
        private final int line;
        private final int column;

        Forbidden(String template, int line, int column, String word) {
            super("The template uses " + word + ", which is not allowed.");
            this.template = template;
            this.line = line;
            this.column = column;
        }

        BrokenTemplate broken() {
            return new BrokenTemplate(template, line, column, getMessage());
        }
    }

    WatchedTemplates(TemplateLoader files) {
        this.files = files;
    }

    /** SHA-256 of every template read so far, by name. */
    synchronized Map<String, String> used() {
        return new TreeMap<>(used);
    }

    @Override
    public Object findTemplateSource(String name) throws IOException {
        Object file = files.findTemplateSource(name);
        return file == null ? null : new Found(name, file);
    }

    @Override
    public long getLastModified(Object found) {
        return files.getLastModified(((Found) found).file());
    }

    @Override
    public Reader getReader(Object found, String encoding) throws IOException {
        StringWriter text = new StringWriter();
        try (Reader reader = files.getReader(((Found) found).file(), encoding)) {
            reader.transferTo(text);
        }
        String name = ((Found) found).name();
        if (name.endsWith(".ftlh")) {
            ForbiddenWords.check(name, text.toString());
        }
        synchronized (this) {
            used.put(name, DigestUtils.sha256Hex(text.toString()));
        }
        return new StringReader(text.toString());
    }

    @Override
    public void closeTemplateSource(Object found) throws IOException {
        files.closeTemplateSource(((Found) found).file());
    }
}
