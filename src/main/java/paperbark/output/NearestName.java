package paperbark.output;

import freemarker.core.Environment;
import freemarker.core.InvalidReferenceException;
import freemarker.template.Configuration;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import freemarker.template.TemplateHashModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import freemarker.template.TemplateModelIterator;
import java.io.Writer;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.value.Nearest;

/**
 * Finds the name that was meant by a misspelt variable, macro, parameter or word of the language.
 * It looks at the moment of the mistake, when the names that could be meant are still in force.
 */
final class NearestName implements TemplateExceptionHandler {
    private static final String ATTRIBUTE = "paperbark.nearest";
    private static final Pattern PARTS =
            Pattern.compile("(?:(?<of>[A-Za-z_]\\w*)\\.)?(?<name>[A-Za-z_]\\w*)");
    private static final Pattern PARAMETER =
            Pattern.compile(
                    "(?s)(?<said>.*has no parameter with name \"(?<name>[^\"]+)\")\\..*?names are: (?<names>[^\n]*).*");
    private static final Pattern BUILT_IN =
            Pattern.compile("(?<said>Unknown built-in: \"(?<name>\\w+)\")\\..*");
    private static final Pattern DIRECTIVE =
            Pattern.compile("(?<said>Unknown directive: #(?<name>\\w+))\\..*");

    @Override
    public void handleTemplateException(TemplateException fault, Environment at, Writer out)
            throws TemplateException {
        if (fault instanceof InvalidReferenceException) {
            asked(fault)
                    .flatMap(asked -> nearest(asked, at))
                    .ifPresent(name -> at.setCustomAttribute(ATTRIBUTE, name));
        }
        throw fault;
    }

    private static Optional<Matcher> asked(TemplateException fault) {
        return Optional.ofNullable(fault.getBlamedExpressionString())
                .map(PARTS::matcher)
                .filter(Matcher::matches);
    }

    private static Optional<String> nearest(Matcher asked, Environment at) {
        try {
            String name = asked.group("name");
            if (asked.group("of") == null) {
                return Nearest.to(name, names(at.getKnownVariableNames()));
            }
            TemplateModel of = at.getVariable(asked.group("of"));
            return of instanceof TemplateHashModelEx all
                    ? Nearest.to(name, keys(all)).map(n -> asked.group("of") + "." + n)
                    : Optional.empty();
        } catch (TemplateModelException e) {
            return Optional.empty();
        }
    }

    private static Set<String> names(Set<?> known) {
        Set<String> names = new TreeSet<>();
        known.forEach(name -> names.add(String.valueOf(name)));
        return names;
    }

    private static Set<String> keys(TemplateHashModelEx all) throws TemplateModelException {
        Set<String> keys = new TreeSet<>();
        for (TemplateModelIterator i = all.keys().iterator(); i.hasNext(); ) {
            keys.add(String.valueOf(i.next()));
        }
        return keys;
    }

    /** The end of a sentence about something that is not there: its nearest name, if any. */
    static String known(Environment environment) {
        return Optional.ofNullable(environment)
                .map(e -> e.getCustomAttribute(ATTRIBUTE))
                .map(name -> inWords(String.valueOf(name)))
                .orElse("");
    }

    /**
     * The engine's message about a word that it does not know, with the nearest one; other messages
     * to the end of their first line.
     */
    static String toWord(String message) {
        Configuration language = new Configuration(Configuration.VERSION_2_3_34);
        Matcher parameter = PARAMETER.matcher(message);
        if (parameter.matches()) {
            return named(parameter, List.of(parameter.group("names").split("[\\s,.\"]+")));
        }
        String line = message.lines().findFirst().orElse("").strip();
        Matcher builtIn = BUILT_IN.matcher(line);
        if (builtIn.matches()) {
            return named(builtIn, names(language.getSupportedBuiltInNames()));
        }
        Matcher directive = DIRECTIVE.matcher(line);
        if (directive.matches()) {
            return named(directive, names(language.getSupportedBuiltInDirectiveNames()));
        }
        return line;
    }

    private static String named(Matcher said, Collection<String> names) {
        return said.group("said")
                + Nearest.to(said.group("name"), names).map(NearestName::inWords).orElse("")
                + ".";
    }

    private static String inWords(String name) {
        return "; the nearest is \"" + name + "\"";
    }
}
