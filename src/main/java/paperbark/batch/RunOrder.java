package paperbark.batch;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.disk.FileNames;
import paperbark.job.Job;
import paperbark.output.CaseFile;
import paperbark.output.RunFile;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.RunPack;
import paperbark.value.Days;

/**
 * The order in which packs are printed: along the routes, then by job; those that are held come
 * last.
 */
final class RunOrder {
    private static final String HELD = "Held";
    private final List<FiledPack> packs;

    RunOrder(List<FiledPack> packs) {
        this.packs =
                packs.stream()
                        .sorted(
                                Comparator.comparing((FiledPack p) -> p.caseFile().isHeld())
                                        .thenComparing(p -> p.caseFile().job(), Job.ROUTE)
                                        .thenComparing(p -> p.caseFile().job().reference()))
                        .toList();
    }

    /** All packs. */
    List<RunPack> all() {
        return numbered(packs);
    }

    /**
     * A run of its own.
     *
     * @param file where it goes
     * @param title whose day it is
     * @param held whether it holds the jobs that are held, for which nobody drives
     * @param jobs the jobs in order
     * @param packs their packs
     */
    record Part(
            RunFile file, String title, boolean held, List<CaseFile> jobs, List<RunPack> packs) {}

    /** One run for each crew and day, and one of the jobs that are held. */
    List<Part> byCrewAndDay() {
        Map<String, List<FiledPack>> parts = new LinkedHashMap<>();
        for (FiledPack pack : packs) {
            parts.computeIfAbsent(title(pack.caseFile()), t -> new ArrayList<>()).add(pack);
        }
        List<Part> runs = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        parts.forEach((title, own) -> runs.add(part(title, own, taken)));
        return runs;
    }

    private static Part part(String title, List<FiledPack> own, Set<String> taken) {
        CaseFile first = own.get(0).caseFile();
        Job job = first.job();
        String name =
                first.isHeld()
                        ? "held"
                        : job.crewDay().map(LocalDate::toString).orElse("no-day")
                                + "-"
                                + job.visit().crew().map(FileNames::slug).orElse("no-crew");
        return new Part(
                new RunFile("print-run-" + free(name, taken) + ".pdf", title),
                title,
                first.isHeld(),
                own.stream().map(FiledPack::caseFile).toList(),
                numbered(own));
    }

    /** Crews may differ by signs alone that no file name has. */
    private static String free(String name, Set<String> taken) {
        String free = name;
        for (int i = 2; !taken.add(free.toLowerCase(Locale.ROOT)); i++) {
            free = name + "-" + i;
        }
        return free;
    }

    private static String title(CaseFile file) {
        return file.isHeld()
                ? HELD
                : crew(file) + ", " + file.job().crewDay().map(Days::show).orElse("no day yet");
    }

    private static String crew(CaseFile file) {
        Optional<String> crew = file.job().visit().crew();
        return crew.map(c -> "Crew " + c).orElse("No crew");
    }

    private static List<RunPack> numbered(List<FiledPack> packs) {
        List<RunPack> run = new ArrayList<>();
        for (FiledPack pack : packs) {
            CaseFile file = pack.caseFile();
            run.add(
                    new RunPack(
                            pack.file(),
                            file.job().reference(),
                            "Job " + (run.size() + 1) + " of " + packs.size(),
                            file.isHeld() ? HELD : crew(file)));
        }
        return run;
    }
}
