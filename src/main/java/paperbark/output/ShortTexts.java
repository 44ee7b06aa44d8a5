package paperbark.output;

import freemarker.template.Template;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Short texts in the language of templates, such as the cells of mapping tables. Each is checked
 * and parsed once, since a table is asked for every job.
 */
final class ShortTexts {
    // A firm's tables have some hundred cells; what is left out is parsed again.
    private static final int MOST = 1_000;

    private final GuardedConfiguration configuration;
    private final Map<Text, Template> parsed =
            new LinkedHashMap<>() {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<Text, Template> eldest) {
                    return size() > MOST;
                }
            };

    private record Text(String name, String text) {}

    ShortTexts(GuardedConfiguration configuration) {
        this.configuration = configuration;
    }

    /**
     * The template of a text, with {@code yes} and {@code no} for booleans.
     *
     * @throws IOException when the text is malformed or forbidden
     */
    Template get(String name, String text) throws IOException {
        Text asked = new Text(name, text);
        synchronized (parsed) {
            Template known = parsed.get(asked);
            if (known != null) {
                return known;
            }
        }
        ForbiddenWords.check(name, text);
        Template template = new Template(name, text, configuration);
        template.setBooleanFormat("yes,no");
        configuration.guarded(template);
        synchronized (parsed) {
            parsed.put(asked, template);
        }
        return template;
    }
}
