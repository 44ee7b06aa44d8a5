package paperbark.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import paperbark.answer.Explanation.Fact;
import paperbark.finding.Finding;

/** Two columns of what is so and what would be, within 110 characters. */
final class SideBySide {
    /** Stands before a line whose two columns differ. */
    static final String SIGN = "*";

    private static final int WIDTH = 40;
    private static final Columns COLUMNS = new Columns(24, WIDTH, WIDTH);

    private final PrintWriter out;

    SideBySide(PrintWriter out) {
        this.out = out;
    }

    /** The headings of the columns. */
    void heads() {
        COLUMNS.row("", "As the register says", "As supposed")
                .forEach(line -> out.println("  " + line));
    }

    /** One row; each of its lines that differs carries the sign. */
    void row(String label, String one, String other) {
        for (List<String> line : COLUMNS.lines(label, one, other)) {
            String sign = line.get(1).equals(line.get(2)) ? " " : SIGN;
            out.println((sign + " " + String.join("  ", line)).stripTrailing());
        }
    }

    /** Working above result, so that results stand beside each other however long the working. */
    void step(String label, List<String> one, List<String> other) {
        int height = Math.max(height(one.get(0)), height(other.get(0)));
        row(label, under(one, height), under(other, height));
    }

    private static int height(String working) {
        return Columns.wrapped(working, WIDTH).size();
    }

    private static String under(List<String> step, int height) {
        return step.get(0) + "\n".repeat(height - height(step.get(0)) + 1) + step.get(1);
    }

    /** Facts, paired by name. */
    void facts(List<Fact> ones, List<Fact> others) {
        List<String> names = new ArrayList<>(ones.stream().map(Fact::name).toList());
        others.stream().map(Fact::name).filter(n -> !names.contains(n)).forEach(names::add);
        names.forEach(name -> row(name, value(ones, name), value(others, name)));
    }

    private static String value(List<Fact> facts, String name) {
        return facts.stream()
                .filter(fact -> fact.name().equals(name))
                .map(f -> f.from().isEmpty() ? f.value() : f.value() + ", " + f.from())
                .findFirst()
                .orElse("-");
    }

    /** Findings, paired by what they say. */
    void findings(List<Finding> ones, List<Finding> others) {
        for (Finding one : ones) {
            boolean both = others.stream().anyMatch(says(one));
            row(name(one), one.fact(), both ? one.fact() : "-");
        }
        others.stream()
                .filter(other -> ones.stream().noneMatch(says(other)))
                .forEach(other -> row(name(other), "-", other.fact()));
        if (ones.isEmpty() && others.isEmpty()) {
            row("", "nothing", "nothing");
        }
    }

    private static Predicate<Finding> says(Finding finding) {
        return other ->
                other.code() == finding.code()
                        && other.severity() == finding.severity()
                        && other.fact().equals(finding.fact());
    }

    private static String name(Finding finding) {
        return finding.severity().word() + " " + finding.code().code();
    }
}
