package paperbark.output;

import freemarker.template.Configuration;
import freemarker.template.DefaultMapAdapter;
import freemarker.template.SimpleObjectWrapper;
import freemarker.template.TemplateCollectionModel;
import freemarker.template.TemplateHashModelEx2;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.util.LinkedHashMap;
import java.util.SortedSet;
import java.util.TreeSet;
import paperbark.value.Nearest;

/**
 * The facts of a record as a template sees them. It knows which facts there can be: one that is
 * absent has no entry, one that cannot be is a mistake in the template, also where the template
 * says what to print instead.
 */
final class FactMap extends LinkedHashMap<String, Object> {
    private static final long serialVersionUID = 1L;

    // Shared by all maps of a kind of record, and copied by the few that know more.
    private SortedSet<String> possible;
    private boolean ownsPossible;

    /** An empty one that knows the names, which nobody changes. */
    FactMap(SortedSet<String> possible) {
        this.possible = possible;
    }

    /** Says that there can be such a fact. */
    void expect(String name) {
        if (possible.contains(name)) {
            return;
        }
        if (!ownsPossible) {
            possible = new TreeSet<>(possible);
            ownsPossible = true;
        }
        possible.add(name);
    }

    /** Another one that knows the same names and holds nothing. */
    FactMap empty() {
        return new FactMap(ownsPossible ? new TreeSet<>(possible) : possible);
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

    /** Does not copy the facts, as the library's own hash would each time one is asked for. */
    private static final class Hash implements TemplateHashModelEx2 {
        private final FactMap facts;
        private final DefaultMapAdapter all;

        Hash(FactMap facts, Wrapper wrapper) {
            this.facts = facts;
            all = DefaultMapAdapter.adapt(facts, wrapper);
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
            return all.get(name);
        }

        @Override
        public int size() {
            return all.size();
        }

        @Override
        public boolean isEmpty() {
            return all.isEmpty();
        }

        @Override
        public TemplateCollectionModel keys() {
            return all.keys();
        }

        @Override
        public TemplateCollectionModel values() {
            return all.values();
        }

        @Override
        public KeyValuePairIterator keyValuePairIterator() {
            return all.keyValuePairIterator();
        }
    }
}
