package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.rules.Rulebook;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/**
 * How long the signed papers of a batch are kept. The time runs from the day on which certificates
 * are created, which is not known here; the last possible day is taken, so that no paper is thrown
 * away too early. Source: {@code keep_years} in the rule tables.
 */
public final class KeepUntil {
    private KeepUntil() {}

    /**
     * One note for each scheme under which an installed job claims.
     *
     * @param register file name of the register
     * @param batch what the jobs earn
     */
    public static List<Finding> of(
            String register, Collection<Entitlements> batch, Rulebook rulebook) {
        return Schemes.KNOWN.all().stream()
                .flatMap(
                        scheme ->
                                lastDay(scheme.name(), batch).stream()
                                        .map(day -> new End(scheme, day)))
                .flatMap(end -> end.note(register, rulebook).stream())
                .toList();
    }

    private static Optional<LocalDate> lastDay(SchemeName scheme, Collection<Entitlements> batch) {
        return batch.stream()
                .flatMap(e -> e.of(scheme).stream())
                .flatMap(e -> e.lastDay().stream())
                .max(Comparator.naturalOrder());
    }

    /** The last day on which certificates of the batch can be created. */
    private record End(Scheme scheme, LocalDate lastDay) {

        Optional<Finding> note(String register, Rulebook rulebook) {
            return scheme.keepYears(lastDay, rulebook)
                    .map(
                            years ->
                                    Finding.of(
                                                    FindingCode.KEEP_UNTIL,
                                                    new Place.InFile(register),
                                                    fact(years.row().whole()),
                                                    "File the signed papers so that they last until then.")
                                            .by(years.ref()));
        }

        private String fact(int years) {
            return "%ss of this register can be created until %s, and their papers are kept %d years from then, until %s."
                    .formatted(
                            scheme.name().word(),
                            Days.show(lastDay),
                            years,
                            Days.show(lastDay.plusYears(years)));
        }
    }
}
