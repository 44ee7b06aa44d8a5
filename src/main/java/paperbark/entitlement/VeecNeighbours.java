package paperbark.entitlement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.finding.RuleRef;
import paperbark.rules.CountRounding;
import paperbark.rules.Dated;
import paperbark.rules.ListedCountRow;
import paperbark.rules.Rulebook;
import paperbark.rules.VeecCondition;
import paperbark.value.Days;

/**
 * How far the number moves if the work is done a year earlier or later.
 *
 * @param working where the step goes
 * @param rules the rules
 * @param subject what is counted
 */
record VeecNeighbours(Working working, Rulebook rules, VeecCount.Subject subject) {

    /** Adds the step for the same job a year before and after the day. */
    void compare(LocalDate day) {
        List<String> sums = new ArrayList<>();
        List<String> counts = new ArrayList<>();
        List<RuleRef> refs = new ArrayList<>();
        for (LocalDate other : List.of(day.minusYears(1), day.plusYears(1))) {
            Year year = Year.of(rules, subject, other);
            sums.add("on %s: %s".formatted(Days.show(other), year.sums()));
            counts.add("%s on %s".formatted(year.number(), Days.show(other)));
            refs.addAll(year.refs());
        }
        working.step(
                "In the neighbouring years",
                String.join("; ", sums),
                String.join(", ", counts),
                refs.stream().distinct().toArray(RuleRef[]::new));
    }

    /** The same job on a day of another year. */
    private record Year(
            Optional<VeecCount.Computed> computed,
            Optional<Dated<ListedCountRow>> listed,
            Optional<CountRounding> rounding) {

        static Year of(Rulebook rules, VeecCount.Subject subject, LocalDate day) {
            VeecCount count = VeecCount.of(rules, subject, day);
            Optional<CountRounding> rounding =
                    rules.veecConditions()
                            .on(day, VeecCondition.COUNT_ROUNDING)
                            .map(setting -> setting.row().rounding());
            return new Year(
                    count.computed().filter(c -> rounding.isPresent()), count.listed(), rounding);
        }

        String sums() {
            List<String> sums = new ArrayList<>();
            computed.ifPresent(c -> sums.add(sum(c)));
            listed.ifPresent(l -> sums.add("as listed, " + l.row().certificates()));
            return sums.isEmpty() ? "not in the tables" : String.join(", or ", sums);
        }

        private String sum(VeecCount.Computed computed) {
            return "%s t, %s".formatted(computed.sum().trace(), rounding.orElseThrow().inWords());
        }

        /** As on the day itself: where both ways give a number, the lower one. */
        String number() {
            return Stream.of(
                            computed.map(c -> rounding.orElseThrow().whole(c.tonnes())),
                            listed.map(l -> l.row().certificates()))
                    .flatMap(Optional::stream)
                    .min(Integer::compare)
                    .map(String::valueOf)
                    .orElse("not known");
        }

        List<RuleRef> refs() {
            return Stream.concat(
                            computed.stream().flatMap(c -> c.rules().stream()),
                            listed.stream().map(Dated::ref))
                    .toList();
        }
    }
}
