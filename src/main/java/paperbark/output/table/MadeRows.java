package paperbark.output.table;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;
import java.util.function.Function;

/** Rows that are made from their source each time they are looked at. */
final class MadeRows<T> extends AbstractList<List<TableCell>> implements RandomAccess {
    private final List<T> sources;
    private final Function<T, List<TableCell>> make;

    private MadeRows(List<T> sources, Function<T, List<TableCell>> make) {
        this.sources = List.copyOf(sources);
        this.make = make;
    }

    /** One row a source. */
    static <T> List<List<TableCell>> of(List<T> sources, Function<T, List<TableCell>> make) {
        return new MadeRows<>(sources, make);
    }

    @Override
    public List<TableCell> get(int index) {
        return make.apply(sources.get(index));
    }

    @Override
    public int size() {
        return sources.size();
    }
}
