package paperbark.firm;

import java.util.AbstractList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * A table's rows in their order, each to be found by its name.
 *
 * @param <T> what the rows stand for
 */
public final class ByName<T> extends AbstractList<T> {
    private final List<T> all;
    private final Map<String, T> byKey = new HashMap<>();

    private ByName(List<T> all) {
        this.all = List.copyOf(all);
    }

    /** The rows; of two with one name the first is found. */
    public static <T> ByName<T> of(List<T> rows, Function<T, String> name) {
        ByName<T> named = new ByName<>(rows);
        rows.forEach(row -> named.byKey.putIfAbsent(TakenNames.key(name.apply(row)), row));
        return named;
    }

    /** The row of that name, whatever the case and spacing. */
    public Optional<T> named(String name) {
        return Optional.ofNullable(byKey.get(TakenNames.key(name)));
    }

    @Override
    public T get(int index) {
        return all.get(index);
    }

    @Override
    public int size() {
        return all.size();
    }
}
