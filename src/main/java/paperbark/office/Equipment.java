package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.batch.SampleFirm;
import paperbark.disk.Shipped;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.job.Field;
import paperbark.output.BrokenTemplate;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;
import paperbark.output.Typeface;
import paperbark.rules.Rulebook;
import paperbark.rules.RulebookException;
import paperbark.settle.AdviceField;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Reading;

/** Looks whether what a run needs besides a register is fit for use. */
public final class Equipment {
    private static final String ENDING = ".ftlh";

    private Equipment() {}

    /** All that a run would say of the firm's tables, a sentence each, but for mere notes. */
    public static List<String> tables(Path tables) {
        Reading<FirmTables> read = FirmTablesReader.read(tables);
        List<Finding> findings = new ArrayList<>(read.findings());
        HeadingTable.of(Field.values(), "columns", tables, findings);
        HeadingTable.of(List.of(AdviceField.values()), "advice-columns", tables, findings);
        List<String> wrong = new ArrayList<>();
        findings.stream()
                .filter(f -> f.severity() != Severity.NOTE)
                .map(Equipment::inWords)
                .forEach(wrong::add);
        read.result().map(SampleFirm::left).filter(left -> !left.isEmpty()).stream()
                .map(Equipment::left)
                .forEach(wrong::add);
        return wrong;
    }

    private static String left(List<String> left) {
        return "still hold what is the sample firm's: "
                + String.join(", ", left)
                + ". Put your own in its place; papers that show it are held.";
    }

    /** How much the firm's tables hold, such as {@code 12 products}; empty ones are told too. */
    public static String counts(Path tables) {
        return FirmTablesReader.read(tables)
                .result()
                .map(
                        t ->
                                Stream.of(
                                                count(t.people().size(), "person", "people"),
                                                count(t.makers().size(), "maker", "makers"),
                                                count(t.products().size(), "product", "products"),
                                                count(t.sellers().size(), "seller", "sellers"),
                                                count(t.buyers().size(), "buyer", "buyers"),
                                                count(t.offers().size(), "offer", "offers"))
                                        .collect(Collectors.joining(", ")))
                .orElse("");
    }

    private static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /**
     * Every paper and variant that there is a template or form for, as a preview takes them.
     *
     * @param own the firm's folder of templates
     * @param tables the firm's tables, which say what paper a form is for
     */
    public static SortedSet<String> papers(Optional<Path> own, Path tables) throws IOException {
        SortedSet<String> papers = new TreeSet<>();
        for (String name : templateNames(own)) {
            for (PaperKind kind : PaperKind.values()) {
                if (name.startsWith(kind.folder() + "/") && name.endsWith(ENDING)) {
                    papers.add(name.substring(0, name.length() - ENDING.length()));
                }
            }
        }
        FirmTablesReader.read(tables)
                .result()
                .ifPresent(
                        firm -> {
                            firm.buyers().stream()
                                    .flatMap(b -> b.forms().entrySet().stream())
                                    .map(
                                            e ->
                                                    PaperKind.of(e.getKey()).folder()
                                                            + "/"
                                                            + e.getValue())
                                    .forEach(papers::add);
                            firm.makers().stream()
                                    .flatMap(m -> m.warrantyVariant().stream())
                                    .map(v -> PaperKind.WARRANTY.folder() + "/" + v)
                                    .forEach(papers::add);
                        });
        return papers;
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
        TemplateEngine engine = new TemplateEngine(own);
        List<String> broken = new ArrayList<>();
        for (String name : templateNames(own)) {
            if (!name.endsWith(ENDING)) {
                continue;
            }
            try {
                engine.read(name);
            } catch (BrokenTemplate e) {
                broken.add(inWords(e.finding()));
            }
        }
        return broken;
    }

    /** Whether anything in the firm's folder of templates differs from what is shipped. */
    public static boolean hasOwnPapers(Optional<Path> own) throws IOException {
        if (own.isEmpty()) {
            return false;
        }
        SortedMap<String, byte[]> shipped = Shipped.below(Shipped.TEMPLATES);
        try (Stream<Path> files = Files.walk(own.get())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                byte[] same = shipped.get(own.get().relativize(file).toString().replace('\\', '/'));
                if (same == null || !Arrays.equals(same, Files.readAllBytes(file))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static SortedSet<String> templateNames(Optional<Path> own) throws IOException {
        SortedSet<String> names = new TreeSet<>(Shipped.below(Shipped.TEMPLATES).keySet());
        if (own.isPresent()) {
            try (Stream<Path> files = Files.walk(own.get())) {
                files.map(f -> own.get().relativize(f).toString().replace('\\', '/'))
                        .forEach(names::add);
            }
        }
        return names;
    }

    /** Whether the typeface came along whole: it has a sign for a letter of any kind we print. */
    public static boolean hasTypeface() {
        return "Az09\u0141\u1ec5\u0416".chars().allMatch(Typeface.shared()::prints);
    }

    private static String inWords(Finding finding) {
        return finding.where() + ": " + finding.fact() + " " + finding.remedy();
    }
}
