package paperbark.rules;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.rules.RuleFiles.Content;
import paperbark.rules.RuleTable.Entry;
import paperbark.rules.RulebookException.Fault;

/** Loads and proves all tables, gathering every fault before it gives up. */
final class RulebookLoader {
    private final List<Fault> faults = new ArrayList<>();
    private final List<TableFile> files = new ArrayList<>();
    private final List<String> known = new ArrayList<>(List.of(SourceReader.NAME));
    private final RuleFiles folder;
    private final Checksums checksums;
    private final Map<String, Source> sources;

    RulebookLoader(RuleFiles ruleFiles) {
        folder = ruleFiles;
        Optional<Path> firmRules = ruleFiles.folder();
        firmRules
                .filter(f -> !Files.isDirectory(f))
                .ifPresent(f -> faults.add(new Fault(f.toString(), 0, "is not a folder")));
        checksums = Checksums.read(folder.shipped(Checksums.NAME), faults);
        sources = SourceReader.read(contents(SourceReader.NAME), faults);
    }

    Rulebook load() {
        Rulebook rulebook =
                new Rulebook(
                        table(ZoneRow.LAYOUT),
                        table(YearsRow.LAYOUT),
                        settings(StcLimit.LAYOUT, StcLimit.class),
                        table(ActivityRow.LAYOUT),
                        table(ClimateZoneRow.LAYOUT),
                        table(EmissionFactorRow.LAYOUT),
                        settings(VeecCondition.LAYOUT, VeecCondition.class),
                        table(FactorRow.LAYOUT),
                        table(ListedCountRow.LAYOUT),
                        table(PostcodeStateRow.LAYOUT),
                        settings(RecordRule.LAYOUT, RecordRule.class),
                        table(HolidayRow.LAYOUT),
                        table(StateBoxRow.LAYOUT),
                        table(GstRow.LAYOUT),
                        files);
        folder.firmsNames().stream()
                .filter(name -> !known.contains(name))
                .forEach(name -> faults.add(unknown(name)));
        if (!faults.isEmpty()) {
            throw new RulebookException(faults);
        }
        return rulebook;
    }

    private <K, R> RuleTable<K, R> table(TableLayout<K, R> layout) {
        known.add(layout.name());
        TableReader<K, R> reader = new TableReader<>(layout, sources, faults);
        List<Entry<R>> all = new ArrayList<>();
        for (Content content : contents(layout.name())) {
            List<Entry<R>> entries = reader.read(content);
            faults.addAll(TableCheck.overlaps(entries.stream().map(Entry::raw).toList()));
            // The firm's come last and go to the front: where two rows speak, the first wins.
            all.addAll(0, entries);
        }
        RuleTable<K, R> table = new RuleTable<>(layout.name(), layout.keyText(), all);
        faults.addAll(TableCheck.holes(table.rows()));
        return table;
    }

    private <E extends Enum<E>> RuleTable<E, Setting> settings(
            TableLayout<E, Setting> layout, Class<E> settings) {
        RuleTable<E, Setting> table = table(layout);
        Stream.of(settings.getEnumConstants())
                .filter(s -> !table.knows(s))
                .forEach(
                        s ->
                                faults.add(
                                        new Fault(
                                                layout.name(),
                                                0,
                                                "has no row for " + Setting.key(s))));
        return table;
    }

    private List<Content> contents(String name) {
        Optional<Content> shipped = folder.shipped(name);
        if (shipped.isEmpty()) {
            faults.add(new Fault(name, 0, "is missing from the program"));
        }
        shipped.flatMap(s -> checksums.fault(s.file())).ifPresent(faults::add);
        List<Content> both =
                Stream.of(shipped, folder.firms(name)).flatMap(Optional::stream).toList();
        both.forEach(c -> files.add(c.file()));
        return both;
    }

    private Fault unknown(String name) {
        return new Fault(
                TableFile.label(name, true),
                0,
                "no rule table has this name; there are " + String.join(", ", known));
    }
}
