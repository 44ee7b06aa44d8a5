package paperbark.rules;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.finding.RuleRef;
import paperbark.value.Postcode;
import paperbark.value.State;

/**
 * All rule tables, proven and ready to be asked.
 *
 * @param zones STC zones by postcode
 * @param years STC years by day of installation
 * @param stcLimits single figures of the STC rules
 * @param activities VEEC activities by old and new heater
 * @param climateZones VEEC climate zones by STC zone
 * @param emissionFactors electricity emissions factors by day
 * @param veecConditions single figures of the VEEC rules
 * @param factors VEEC factors by activity and climate zone; only what the firm entered
 * @param listedCounts VEECs of a product as listed; only what the firm entered
 * @param postcodeStates states by postcode
 * @param records how long records are kept
 * @param holidays public holidays by day
 * @param stateBoxes outermost points of the states
 * @param gst share of GST in a price
 * @param tables the files that went in, shipped and the firm's
 */
public record Rulebook(
        RuleTable<Postcode, ZoneRow> zones,
        RuleTable<Unkeyed, YearsRow> years,
        RuleTable<StcLimit, Setting> stcLimits,
        RuleTable<ActivityRow.Key, ActivityRow> activities,
        RuleTable<Integer, ClimateZoneRow> climateZones,
        RuleTable<Unkeyed, EmissionFactorRow> emissionFactors,
        RuleTable<VeecCondition, Setting> veecConditions,
        RuleTable<FactorRow.Key, FactorRow> factors,
        RuleTable<ListedCountRow.Key, ListedCountRow> listedCounts,
        RuleTable<Postcode, PostcodeStateRow> postcodeStates,
        RuleTable<RecordRule, Setting> records,
        RuleTable<LocalDate, HolidayRow> holidays,
        RuleTable<State, StateBoxRow> stateBoxes,
        RuleTable<Unkeyed, GstRow> gst,
        List<TableFile> tables) {

    /** Keeps the list from being changed. */
    public Rulebook {
        tables = List.copyOf(tables);
    }

    /**
     * Loads the shipped tables, overlaid by the firm's of the same names: where a row of each
     * speaks for a day and key, the firm's wins. Shipped tables must be the ones in {@code
     * checksums.csv}.
     *
     * @param firmRules folder with the firm's tables, where it has any
     * @throws RulebookException naming every table and row that cannot be used
     */
    public static Rulebook load(Optional<Path> firmRules) {
        return new RulebookLoader(new RuleFiles(firmRules, RuleFiles::inProgram)).load();
    }

    /** All tables. */
    public List<RuleTable<?, ?>> all() {
        return List.of(
                zones,
                years,
                stcLimits,
                activities,
                climateZones,
                emissionFactors,
                veecConditions,
                factors,
                listedCounts,
                postcodeStates,
                records,
                holidays,
                stateBoxes,
                gst);
    }

    /** The row in words that a reference points to. */
    public Optional<RuleLine> line(RuleRef ref) {
        return all().stream()
                .flatMap(table -> table.lines().stream())
                .filter(line -> line.ref().equals(ref))
                .findFirst();
    }
}
