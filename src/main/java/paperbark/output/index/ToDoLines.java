package paperbark.output.index;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import paperbark.finding.Severity;
import paperbark.output.CaseFile;
import paperbark.output.ToDo;
import paperbark.value.Days;

/** What there is to do for a job that no stop holds, in the words of the index page. */
final class ToDoLines {
    private static final int CHECKS_SHOWN = 3;

    private ToDoLines() {}

    /** What the checks of a job ask for; of many the first, as all stand with its findings. */
    static List<String> checks(CaseFile file, HiddenValues secrets) {
        List<String> all =
                file.findings().stream()
                        .filter(f -> f.severity() == Severity.CHECK)
                        .map(secrets::remedy)
                        .distinct()
                        .toList();
        int more = all.size() - CHECKS_SHOWN;
        return more <= 0
                ? all
                : Stream.concat(
                                all.stream().limit(CHECKS_SHOWN),
                                Stream.of("and " + more + " more, with its findings"))
                        .toList();
    }

    /** One text for each who is to act. */
    static List<String> missing(List<ToDo> all) {
        Map<String, List<String>> byWhom = new LinkedHashMap<>();
        for (ToDo toDo : all) {
            byWhom.computeIfAbsent(toDo.who(), w -> new ArrayList<>())
                    .add(
                            toDo.what()
                                    + toDo.by()
                                            .map(day -> " (by " + Days.show(day) + ")")
                                            .orElse(""));
        }
        return byWhom.entrySet().stream()
                .map(e -> e.getKey() + ": " + String.join(", ", e.getValue()))
                .toList();
    }
}
