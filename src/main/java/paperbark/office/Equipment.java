package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.Shipped;
import paperbark.finding.Finding;
import paperbark.firm.FirmTablesReader;
import paperbark.job.Field;
import paperbark.output.BrokenTemplate;
import paperbark.output.TemplateEngine;
import paperbark.output.Typeface;
import paperbark.rules.Rulebook;
import paperbark.rules.RulebookException;
import paperbark.sheet.HeadingTable;

/** Looks whether what a run needs besides a register is fit for use. */
public final class Equipment {
    private Equipment() {}

    /** What keeps the firm's tables from being used, a sentence each. */
    public static List<String> tables(Path tables) {
        List<Finding> findings = new ArrayList<>(FirmTablesReader.read(tables).findings());
        HeadingTable.of(Field.values(), "columns", tables, findings);
        return findings.stream().filter(Finding::stops).map(Equipment::inWords).toList();
    }

    /** What keeps the rule tables from being used. */
    public static List<String> rules(Optional<Path> firmRules) {
        try {
            Rulebook.load(firmRules);
            return List.of();
        } catch (RulebookException e) {
            return e.faults().stream().map(Object::toString).toList();
        }
    }

    /** What is malformed or forbidden in any template, the firm's and the shipped ones. */
    public static List<String> templates(Optional<Path> own) throws IOException {
        List<String> names = new ArrayList<>(Shipped.below(Shipped.TEMPLATES).keySet());
        if (own.isPresent()) {
            try (Stream<Path> files = Files.walk(own.get())) {
                files.map(f -> own.get().relativize(f).toString().replace('\\', '/'))
                        .forEach(names::add);
            }
        }
        TemplateEngine engine = new TemplateEngine(own);
        List<String> broken = new ArrayList<>();
        for (String name : names.stream().filter(n -> n.endsWith(".ftlh")).distinct().toList()) {
            try {
                engine.read(name);
            } catch (BrokenTemplate e) {
                broken.add(inWords(e.finding()));
            }
        }
        return broken;
    }

    /** Whether the typeface came along whole: it has a sign for a letter of any kind we print. */
    public static boolean hasTypeface() {
        return "Az09\u0141\u1ec5\u0416".chars().allMatch(Typeface.shared()::prints);
    }

    private static String inWords(Finding finding) {
        return finding.where() + ": " + finding.fact() + " " + finding.remedy();
    }
}
