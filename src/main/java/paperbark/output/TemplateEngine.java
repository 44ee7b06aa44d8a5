package paperbark.output;

import freemarker.cache.ClassTemplateLoader;
import freemarker.cache.FileTemplateLoader;
import freemarker.cache.MultiTemplateLoader;
import freemarker.cache.TemplateLoader;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.TemplateNotFoundException;
import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.concurrent.ConcurrentHashMap;

/**
 * FreeMarker, shut tight: a template sees only the data it is given and only files of the template
 * folder, and cannot reach a Java class, the network or an undefined variable without an error. A
 * template of the firm's goes before the shipped one of the same name.
 */
public final class TemplateEngine {
    // A template that ran out of time once may have met an odd job; after the second time the rest
    // of the batch is not kept waiting.
    private static final int MOST_TRIES = 2;

    private final GuardedConfiguration configuration = new GuardedConfiguration();
    private final ShortTexts texts = new ShortTexts(configuration);
    private final WatchedTemplates templates;
    private final RunLimit limit;
    private final Map<String, Integer> ranOut = new ConcurrentHashMap<>();

    /** An engine on the shipped templates and, before them, those in the firm's folder. */
    public TemplateEngine(Optional<Path> firmFolder) {
        this(firmFolder, RunLimit.USUAL);
    }

    /** The same with another limit. */
    public TemplateEngine(Optional<Path> firmFolder, RunLimit limit) {
        this.limit = limit;
        templates = new WatchedTemplates(loader(firmFolder));
        configuration.setTemplateLoader(templates);
        fixSyntax(configuration);
        configuration.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
        configuration.setAPIBuiltinEnabled(false);
        configuration.setObjectWrapper(new FactMap.Wrapper());
        configuration.setTemplateExceptionHandler(new NearestName());
        configuration.setLogTemplateExceptions(false);
        configuration.setWrapUncheckedExceptions(true);
        configuration.setRecognizeStandardFileExtensions(true);
        configuration.setDefaultEncoding("UTF-8");
        configuration.setLocale(Locale.ROOT);
        configuration.setNumberFormat("computer");
        configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
        configuration.setLocalizedLookup(false);
        configuration.setTemplateUpdateDelayMilliseconds(Long.MAX_VALUE);
    }

    /** One syntax only, so that what is looked for cannot be written another way. */
    static void fixSyntax(Configuration configuration) {
        configuration.setTagSyntax(Configuration.ANGLE_BRACKET_TAG_SYNTAX);
        configuration.setInterpolationSyntax(Configuration.DOLLAR_INTERPOLATION_SYNTAX);
        configuration.setNamingConvention(Configuration.LEGACY_NAMING_CONVENTION);
    }

    private static TemplateLoader loader(Optional<Path> firmFolder) {
        TemplateLoader shipped = new ClassTemplateLoader(TemplateEngine.class, "/templates");
        if (firmFolder.isEmpty()) {
            return shipped;
        }
        try {
            TemplateLoader own = new FileTemplateLoader(firmFolder.get().toRealPath().toFile());
            return new MultiTemplateLoader(new TemplateLoader[] {own, shipped});
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** SHA-256 of every template used so far, by name. */
    public Map<String, String> used() {
        return templates.used();
    }

    /**
     * Reads templates before they are needed, while nobody else uses the engine. One that is
     * missing or broken is told of when it is needed.
     */
    public void readAhead(Collection<String> names) {
        templates.readAhead(() -> names.forEach(this::tryToRead));
    }

    private void tryToRead(String name) {
        if (Thread.currentThread().isInterrupted()) {
            return;
        }
        try {
            configuration.getTemplate(name);
        } catch (IOException | RuntimeException | StackOverflowError atItsTurn) {
            configuration.clearTemplateCache();
        }
    }

    /** Whether there is a template of that name. */
    public boolean has(String name) {
        try {
            configuration.getTemplate(name);
            return true;
        } catch (TemplateNotFoundException e) {
            return false;
        } catch (IOException | StackOverflowError e) {
            return true;
        }
    }

    /**
     * A template's own text, the firm's before the shipped one; empty where there is none that can
     * be read.
     */
    public Optional<String> source(String name) {
        try {
            return text(name);
        } catch (BrokenTemplate e) {
            return Optional.empty();
        }
    }

    /**
     * The same for who must know why there is none.
     *
     * @throws BrokenTemplate when there is one that cannot be read or is not allowed
     */
    public Optional<String> text(String name) throws BrokenTemplate {
        try {
            TemplateLoader loader = configuration.getTemplateLoader();
            Object found = loader.findTemplateSource(name);
            if (found == null) {
                return Optional.empty();
            }
            try (Reader reader = loader.getReader(found, "UTF-8")) {
                StringWriter text = new StringWriter();
                reader.transferTo(text);
                return Optional.of(text.toString());
            } finally {
                loader.closeTemplateSource(found);
            }
        } catch (WatchedTemplates.Forbidden e) {
            throw e.broken();
        } catch (IOException e) {
            throw new BrokenTemplate(name, 0, 0, "The file cannot be read.");
        }
    }

    /**
     * Fills in a template.
     *
     * @param name path below the template folder, e.g. {@code cover/default.ftlh}
     * @param model what the template sees
     * @throws BrokenTemplate when the template is missing, malformed, forbidden, asks for something
     *     that is not there or does not end
     */
    public String render(String name, Map<String, Object> model) throws BrokenTemplate {
        // The names at the top are shared with macros and variables, so only facts below are
        // watched.
        return filled(name, () -> configuration.getTemplate(name), new LinkedHashMap<>(model));
    }

    /**
     * Reads a template without filling it in.
     *
     * @param name path below the template folder
     * @throws BrokenTemplate when it is malformed or forbidden
     */
    public void read(String name) throws BrokenTemplate {
        new TemplateRun(name, () -> configuration.getTemplate(name)).read(limit);
    }

    private String filled(String name, TemplateRun.Source source, Map<String, Object> model)
            throws BrokenTemplate {
        if (isGivenUp(name)) {
            throw new BrokenTemplate(
                    name,
                    0,
                    0,
                    "The template ran out of time for " + MOST_TRIES + " jobs and was given up.");
        }
        TemplateRun run = new TemplateRun(name, source);
        try {
            return run.fill(model, limit);
        } finally {
            if (run.ranOutOfTime()) {
                remember(name);
            }
        }
    }

    /** Remembers that the template, or what it prints, ran out of time. */
    public void remember(String name) {
        ranOut.merge(name, 1, Integer::sum);
    }

    private boolean isGivenUp(String name) {
        return ranOut.getOrDefault(name, 0) >= MOST_TRIES;
    }

    /**
     * Fills in a short text written in the language of templates, such as a cell of a mapping
     * table: under the same rules, but as plain text, with {@code yes} and {@code no} for booleans.
     *
     * @param name where the text stands, for the finding
     * @param text e.g. <code>${job.owner.name}</code>
     * @param model what the text sees
     * @return empty where the text asks for a fact that can be there and is not
     * @throws BrokenTemplate when the text is malformed, forbidden or asks for a fact that cannot
     *     be
     */
    public Optional<String> renderText(String name, String text, Map<String, Object> model)
            throws BrokenTemplate {
        TemplateRun.Source source = () -> texts.get(name, text);
        try {
            return Optional.of(filled(name, source, model));
        } catch (BrokenTemplate e) {
            if (e.lacksFact()) {
                return Optional.empty();
            }
            throw e;
        }
    }
}
