package paperbark.output;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import paperbark.value.Money;

/**
 * The facts that a kind of record has for templates: one a component, in order, and one a public
 * method without arguments, sorted. Looked up once a kind, since reflection costs more than what it
 * finds.
 */
final class FactsOfKind {
    private static final ClassValue<FactsOfKind> OF_RECORDS =
            new ClassValue<>() {
                @Override
                protected FactsOfKind computeValue(Class<?> kind) {
                    return new FactsOfKind(kind);
                }
            };

    private static final ClassValue<Optional<Method>> WORDS =
            new ClassValue<>() {
                @Override
                protected Optional<Method> computeValue(Class<?> kind) {
                    return wordOf(kind);
                }
            };

    private static final Set<String> NOT_FACTS =
            Set.of("hashCode", "toString", "getClass", "notify", "notifyAll", "wait");

    private final Method[] methods;
    private final SortedSet<String> names = new TreeSet<>();

    private FactsOfKind(Class<?> kind) {
        List<Method> all = new ArrayList<>();
        for (RecordComponent component : kind.getRecordComponents()) {
            all.add(component.getAccessor());
            names.add(component.getName());
        }
        Set<String> components = new HashSet<>(names);
        Arrays.stream(kind.getMethods())
                .filter(m -> m.getParameterCount() == 0 && !Modifier.isStatic(m.getModifiers()))
                .filter(m -> !NOT_FACTS.contains(m.getName()) && !components.contains(m.getName()))
                .filter(
                        m ->
                                !Record.class.isAssignableFrom(m.getReturnType())
                                        || m.getReturnType() == Money.class)
                .sorted(Comparator.comparing(Method::getName))
                .forEach(all::add);
        all.forEach(m -> names.add(m.getName()));
        methods = all.toArray(Method[]::new);
    }

    /** Those of a record. */
    static FactsOfKind of(Record record) {
        return OF_RECORDS.get(record.getClass());
    }

    /** An empty map that knows the names. */
    FactMap empty() {
        return new FactMap(names);
    }

    /** Tells name and value of each fact. */
    void each(Record record, BiConsumer<String, Object> take) {
        for (Method method : methods) {
            take.accept(method.getName(), call(method, record));
        }
    }

    /** The word by which templates know a constant. */
    static String word(Enum<?> constant) {
        return WORDS.get(constant.getDeclaringClass())
                .map(method -> String.valueOf(call(method, constant)))
                .orElseGet(constant::name);
    }

    private static Optional<Method> wordOf(Class<?> kind) {
        for (String name : List.of("word", "code", "title")) {
            for (Method method : kind.getMethods()) {
                if (method.getName().equals(name) && method.getParameterCount() == 0) {
                    return Optional.of(method);
                }
            }
        }
        return Optional.empty();
    }

    private static Object call(Method method, Object target) {
        try {
            return method.invoke(target);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException("cannot read " + method, e);
        }
    }
}
