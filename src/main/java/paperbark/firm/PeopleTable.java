package paperbark.firm;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.value.DateRange;
import paperbark.value.Phone;
import paperbark.value.State;
import paperbark.value.Trade;

/** The table of people: a row a licence, so a person may fill several rows. */
final class PeopleTable {
    static final TableShape SHAPE =
            new TableShape(
                    "people",
                    List.of("person", "trade", "licence", "state"),
                    List.of("phone", "class", "from", "to"));

    private PeopleTable() {}

    /** The people in the order of their first rows. */
    static List<Person> read(OpenTable table) {
        Map<String, Person> people = new LinkedHashMap<>();
        for (TableRow row : table.rows()) {
            entry(row)
                    .ifPresent(p -> people.merge(TakenNames.key(p.name()), p, PeopleTable::joined));
        }
        return List.copyOf(people.values());
    }

    private static Optional<Person> entry(TableRow row) {
        Optional<String> name = row.neededText("person");
        Optional<Phone> phone = row.phone("phone");
        List<Licence> licences =
                row.saysAnyOf("trade", "licence", "class", "state", "from", "to")
                        ? licence(row).stream().toList()
                        : List.of();
        return row.build(() -> new Person(name.orElseThrow(), phone, licences));
    }

    private static Optional<Licence> licence(TableRow row) {
        Optional<Trade> trade = row.needed("trade", Trade::parse);
        Optional<String> number = row.neededText("licence");
        Optional<String> licenceClass = row.text("class");
        Optional<State> state = row.needed("state", State::parse);
        DateRange inForce = row.range("from", "to");
        return row.build(
                () ->
                        new Licence(
                                trade.orElseThrow(),
                                number.orElseThrow(),
                                licenceClass,
                                state.orElseThrow(),
                                inForce));
    }

    private static Person joined(Person earlier, Person later) {
        List<Licence> licences = new ArrayList<>(earlier.licences());
        licences.addAll(later.licences());
        return new Person(earlier.name(), earlier.phone().or(later::phone), licences);
    }
}
