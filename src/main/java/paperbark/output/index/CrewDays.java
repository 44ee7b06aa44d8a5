package paperbark.output.index;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import paperbark.job.Visit;
import paperbark.output.CaseFile;
import paperbark.output.index.IndexView.Choices;
import paperbark.output.index.IndexView.CrewDay;
import paperbark.output.index.IndexView.Status;
import paperbark.output.index.IndexView.Step;
import paperbark.output.table.JobStatus;
import paperbark.value.Days;

/** Who goes when: the jobs of a batch by crew and day. */
final class CrewDays {
    private CrewDays() {}

    /** Each crew's days in the order of the route. */
    static List<CrewDay> of(List<CaseFile> cases, Function<CaseFile, Step> step) {
        Map<CrewDay, List<Step>> days = new LinkedHashMap<>();
        cases.stream()
                .sorted(Comparator.comparing(file -> file.job().visit(), Visit.ROUTE))
                .forEach(
                        file -> {
                            Visit visit = file.job().visit();
                            days.computeIfAbsent(
                                            new CrewDay(crew(visit), day(visit), List.of()),
                                            d -> new ArrayList<>())
                                    .add(step.apply(file));
                        });
        return days.entrySet().stream()
                .map(d -> new CrewDay(d.getKey().crew(), d.getKey().day(), d.getValue()))
                .toList();
    }

    /** What the jobs can be chosen by. */
    static Choices choices(List<CaseFile> cases) {
        List<Visit> visits = cases.stream().map(file -> file.job().visit()).toList();
        return new Choices(
                cases.stream()
                        .map(JobStatus::of)
                        .distinct()
                        .sorted(Comparator.reverseOrder())
                        .map(s -> new Status(s.shape(), s.word()))
                        .toList(),
                visits.stream().sorted(Visit.ROUTE).map(CrewDays::crew).distinct().toList(),
                visits.stream()
                        .sorted(Comparator.comparing(v -> v.on().orElse(LocalDate.MAX)))
                        .map(CrewDays::day)
                        .distinct()
                        .toList());
    }

    /** The crew of a visit in words. */
    static String crew(Visit visit) {
        return visit.crew().orElse("no crew");
    }

    /** The day of a visit in words. */
    static String day(Visit visit) {
        return visit.on().map(Days::show).orElse("no day yet");
    }
}
