package paperbark.firm;

import java.util.List;
import java.util.Optional;
import paperbark.value.State;
import paperbark.value.Trade;
import paperbark.value.WholeNumber;

/** The table of the compliance certificates that the states ask for. */
final class StatePapersTable {
    static final TableShape SHAPE =
            new TableShape(
                    "state-papers",
                    List.of("state", "trade", "document", "days", "working_days", "source"),
                    List.of("months"));

    private StatePapersTable() {}

    /** The certificates, in order, one for each state and trade. */
    static List<StatePaper> read(OpenTable table) {
        TakenNames names = new TakenNames();
        return table.rows().stream().flatMap(row -> paper(row, names).stream()).toList();
    }

    private static Optional<StatePaper> paper(TableRow row, TakenNames names) {
        Optional<State> state = row.needed("state", State::parse);
        Optional<Trade> trade = row.needed("trade", Trade::parse);
        Optional<String> document = row.neededText("document");
        Optional<Integer> months = row.optional("months", WholeNumber::parse);
        Optional<Integer> days = row.needed("days", WholeNumber::parse);
        Optional<Boolean> workingDays = row.needed("working_days", CellText::yesNo);
        Optional<String> source = row.neededText("source");
        if (state.isPresent() && trade.isPresent()) {
            names.take(state.get() + " " + trade.get().word(), row);
        }
        return row.build(
                () ->
                        new StatePaper(
                                state.orElseThrow(),
                                trade.orElseThrow(),
                                document.orElseThrow(),
                                months.orElse(0),
                                days.orElseThrow(),
                                workingDays.orElseThrow(),
                                source.orElseThrow()));
    }
}
