package paperbark.output;

import freemarker.core._CoreAPI;
import freemarker.template.Configuration;
import freemarker.template.Template;
import java.io.IOException;
import java.util.Collections;
import java.util.Locale;
import java.util.Set;
import java.util.WeakHashMap;

/**
 * A configuration whose templates, imported ones too, look at every step whether their thread was
 * interrupted, so that a loop without end can be stopped.
 */
final class GuardedConfiguration extends Configuration {
    private final Set<Template> guarded = Collections.newSetFromMap(new WeakHashMap<>());

    GuardedConfiguration() {
        super(VERSION_2_3_34);
    }

    @Override
    public Template getTemplate(
            String name,
            Locale locale,
            Object customLookupCondition,
            String encoding,
            boolean parseAsFtl,
            boolean ignoreMissing)
            throws IOException {
        Template template =
                super.getTemplate(
                        name, locale, customLookupCondition, encoding, parseAsFtl, ignoreMissing);
        if (template == null) {
            return null;
        }
        if (getTemplateLoader() instanceof WatchedTemplates watched) {
            watched.use(template.getName());
        }
        return guarded(template);
    }

    /** The same template with the looks put in. */
    Template guarded(Template template) {
        // The cache hands the same template to several threads; only the first puts the looks in,
        // before anyone uses it.
        synchronized (guarded) {
            if (guarded.add(template)) {
                // The library has them ready, but no setting that asks for them.
                _CoreAPI.addThreadInterruptedChecks(template);
            }
        }
        return template;
    }
}
