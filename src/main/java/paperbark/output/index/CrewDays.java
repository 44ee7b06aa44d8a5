package paperbark.output.index;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import paperbark.job.Job;
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
                .sorted(Comparator.comparing(CaseFile::job, Job.ROUTE))
                .forEach(
                        file -> {
                            Job job = file.job();
                            days.computeIfAbsent(
                                            new CrewDay(crew(job), day(job), List.of()),
                                            d -> new ArrayList<>())
                                    .add(step.apply(file));
                        });
        return days.entrySet().stream()
                .map(d -> new CrewDay(d.getKey().crew(), d.getKey().day(), d.getValue()))
                .toList();
    }

    /** What the jobs can be chosen by. */
    static Choices choices(List<CaseFile> cases) {
        List<Job> jobs = cases.stream().map(CaseFile::job).toList();
        return new Choices(
                cases.stream()
                        .map(JobStatus::of)
                        .distinct()
                        .sorted(Comparator.reverseOrder())
                        .map(s -> new Status(s.shape(), s.word()))
                        .toList(),
                jobs.stream().sorted(Job.ROUTE).map(CrewDays::crew).distinct().toList(),
                jobs.stream()
                        .sorted(Comparator.comparing(job -> job.crewDay().orElse(LocalDate.MAX)))
                        .map(CrewDays::day)
                        .distinct()
                        .toList());
    }

    /** Who goes, in words. */
    static String crew(Job job) {
        return job.visit().crew().orElse("no crew");
    }

    /** When they go, in words. */
    static String day(Job job) {
        return job.crewDay().map(Days::show).orElse("no day yet");
    }
}
