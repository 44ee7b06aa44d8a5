package paperbark.output;

import freemarker.template.Configuration;
import freemarker.template.SimpleHash;
import freemarker.template.SimpleObjectWrapper;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.util.LinkedHashMap;
import java.util.Set;
import java.util.TreeSet;
import paperbark.value.Nearest;

/**
 * The facts of a record as a template sees them. It knows which facts there can be: one that is
 * absent has no entry, one that cannot be is a mistake in the template, also where the template
 * says what to print instead.
 */
final class FactMap extends LinkedHashMap<String, Object> {
    private static final long serialVersionUID = 1L;

    private final Set<String> possible = new TreeSet<>();

    /** Says that there can be such a fact. */
    void expect(String name) {
        possible.add(name);
    }

    /** Another one that knows the same names and holds nothing. */
    FactMap empty() {
        FactMap other = new FactMap();
        other.possible.addAll(possible);
        return other;
    }

    private boolean isPossible(String name) {
        return possible.contains(name) || containsKey(name);
    }

    /** Hands plain data to templates, and facts in a form that refuses unknown names. */
    static final class Wrapper extends SimpleObjectWrapper {
        Wrapper() {
            super(Configuration.VERSION_2_3_34);
        }

        @Override
        public TemplateModel wrap(Object value) throws TemplateModelException {
            return value instanceof FactMap facts ? new Hash(facts, this) : super.wrap(value);
        }
    }

    private static final class Hash extends SimpleHash {
        private static final long serialVersionUID = 1L;
        private final transient FactMap facts;

        Hash(FactMap facts, Wrapper wrapper) {
            super(facts, wrapper);
            this.facts = facts;
        }

        @Override
        public TemplateModel get(String name) throws TemplateModelException {
            if (!facts.isPossible(name)) {
                String nearest =
                        Nearest.to(name, facts.possible)
                                .map(n -> "; the nearest is \"" + n + "\"")
                                .orElse("");
                throw new TemplateModelException(
                        "There is no fact \"" + name + "\" here" + nearest + ".");
            }
            return super.get(name);
        }
    }
}
