package paperbark.answer;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import paperbark.finding.Concern;
import paperbark.finding.FindingCode;
import paperbark.rules.FindingSources;

/**
 * What a finding means.
 *
 * @param code the finding
 * @param severity in words, with what a stop holds
 * @param remedies what to do, a sentence each
 * @param examples what was said of small registers that bring it about, line by line
 * @param sources the rules that spoke in the examples, those of the rule behind it, or that there
 *     is none
 */
public record FindingMeaning(
        FindingCode code,
        String severity,
        List<String> remedies,
        List<List<String>> examples,
        List<String> sources) {
    private static final int MOST_EXAMPLES = 3;
    private static final String DO = "  Do: ";
    private static final String WHY = "  Why: ";
    private static final String RULE = "  Rule: ";

    /** Keeps the lists from being changed. */
    public FindingMeaning {
        remedies = List.copyOf(remedies);
        examples = List.copyOf(examples);
        sources = List.copyOf(sources);
    }

    /** Of a code, with the examples that the program brings along. */
    public static FindingMeaning of(FindingCode code) {
        List<List<String>> said = said(code);
        List<String> remedies = after(DO, said);
        return new FindingMeaning(
                code,
                severity(code) + milder(code, said),
                remedies.isEmpty() ? List.of("Nothing; it is worth knowing.") : remedies,
                said.stream().map(FindingMeaning::shown).toList(),
                sources(code, said));
    }

    private static List<String> sources(FindingCode code, List<List<String>> said) {
        List<String> sources = new ArrayList<>(after(RULE, said));
        FindingSources.of(code).forEach(rule -> sources.add(rule.inWords()));
        return sources.isEmpty()
                ? List.of("Common practice or the program's own check, no source.")
                : sources;
    }

    private static String severity(FindingCode code) {
        return switch (code.severity()) {
            case STOP -> "A stop: " + held(code.holds()) + " until it is mended.";
            case CHECK -> "A check: it holds no paper, but somebody must look.";
            case NOTE -> "A note: worth knowing; nothing has to be mended.";
        };
    }

    private static String held(Set<Concern> concerns) {
        if (concerns.contains(Concern.REGISTER)) {
            return "nothing is made of the whole file";
        }
        if (concerns.contains(Concern.JOB)) {
            return "no paper of the job is made";
        }
        List<String> papers = concerns.stream().sorted().map(Concern::words).toList();
        return switch (papers.size()) {
            case 0 -> "the paper that it names is held";
            case 1 -> "the papers for " + papers.get(0) + " are held";
            default ->
                    "of the papers for "
                            + String.join(", ", papers)
                            + " those that hang on it are held";
        };
    }

    /** Whether an example was milder than the catalogue, because less hung on it. */
    private static String milder(FindingCode code, List<List<String>> said) {
        return said.stream()
                .map(lines -> lines.get(0).replaceAll("[ ,:].*", ""))
                .filter(word -> !word.equals(code.severity().word()))
                .findFirst()
                .map(word -> " Where less hangs on it, it is a " + word + ".")
                .orElse("");
    }

    /** The first examples that differ in what they say. */
    private static List<List<String>> said(FindingCode code) {
        Map<String, List<String>> byWords = new LinkedHashMap<>();
        for (String block : text(code).strip().split("\n\n")) {
            List<String> lines = Arrays.asList(block.split("\n"));
            byWords.putIfAbsent(after(DO, List.of(lines)).toString(), lines);
        }
        return byWords.values().stream().limit(MOST_EXAMPLES).toList();
    }

    /** As on the terminal, without what is told beside it. */
    private static List<String> shown(List<String> said) {
        return said.stream().filter(l -> !l.startsWith(WHY) && !l.startsWith(RULE)).toList();
    }

    private static List<String> after(String mark, List<List<String>> said) {
        return said.stream()
                .flatMap(List::stream)
                .filter(line -> line.startsWith(mark))
                .map(line -> line.substring(mark.length()))
                .distinct()
                .toList();
    }

    private static String text(FindingCode code) {
        String name = "/findings/" + code.code() + "/expected.txt";
        try (InputStream in = FindingMeaning.class.getResourceAsStream(name)) {
            return new String(
                    Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
