package paperbark.office;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import paperbark.ledger.Keys;

/**
 * The files that people put by for their jobs, such as photographs, certificates and receipts: in a
 * folder of {@code photos/} that is named after the job, or anywhere in {@code photos/} under a
 * name with the job number in it. They are read and never changed. Links below {@code photos/} are
 * not followed.
 *
 * <pre>{@code
 * JobFiles files = JobFiles.in(office, List.of("SB-1032"));
 * files.of("sb-1032"); // photos/SB-1032/tank.jpg, photos/SB-1032 compliance.pdf
 * }</pre>
 */
public final class JobFiles {
    /** A larger file is hardly a photograph, and no mail takes it. */
    public static final long MOST_BYTES = 50_000_000;

    /** More files of one job than anybody looks at. */
    public static final int MOST_OF_A_JOB = 200;

    /** What is looked at in all, so that a disk full of pictures costs seconds and not hours. */
    private static final int MOST = 200_000;

    private static final int DEEPEST = 8;

    /** The word that setup puts there about how the folder is used. */
    static final String WORD = "HOW-TO.txt";

    private final JobNames names;
    private final Map<String, List<JobFile>> files = new TreeMap<>();
    private final List<Aside> aside = new ArrayList<>();
    private int seen;

    private JobFiles(Collection<String> jobs) {
        names = new JobNames(jobs);
    }

    /**
     * A file or folder that is of no job.
     *
     * @param name its name below {@code photos/}, with {@code /} between folders
     * @param why the reason, in words
     */
    public record Aside(String name, String why) {}

    /**
     * Looks through the folder once; none where there is no folder.
     *
     * @param jobs the numbers of all jobs that there are, so that SB-1032-2 is not taken for
     *     another file of SB-1032
     * @throws IOException when the folder cannot be listed
     */
    public static JobFiles in(Office office, Collection<String> jobs) throws IOException {
        boolean used = Files.isDirectory(office.photos());
        JobFiles found = new JobFiles(used ? jobs : List.of());
        if (used) {
            // The folder itself may be a link of the firm's own, to where its telephones put them.
            Path root = office.photos().toRealPath();
            Files.walkFileTree(
                    root, EnumSet.noneOf(FileVisitOption.class), DEEPEST, found.new Look(root));
        }
        found.files.values().forEach(found::keep);
        found.aside.sort(Comparator.comparing(Aside::name));
        return found;
    }

    private void keep(List<JobFile> of) {
        of.sort(Comparator.comparing(JobFile::name));
        List<JobFile> more = of.subList(Math.min(of.size(), MOST_OF_A_JOB), of.size());
        more.forEach(
                f ->
                        aside.add(
                                new Aside(
                                        f.name(),
                                        "the job has " + MOST_OF_A_JOB + " files before it")));
        more.clear();
    }

    /** The files of a job, by name. */
    public List<JobFile> of(String job) {
        return List.copyOf(files.getOrDefault(Keys.job(job), List.of()));
    }

    /** What is of no job, or could not be taken, by name. */
    public List<Aside> aside() {
        return List.copyOf(aside);
    }

    /** Whether a file is the one that says how the folder is used. */
    static boolean isWord(Path file) {
        return file.getFileName().toString().equals(WORD);
    }

    /** Visits the folder. */
    private final class Look extends SimpleFileVisitor<Path> {
        private final Path root;

        Look(Path root) {
            this.root = root;
        }

        @Override
        public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes about) {
            boolean passed = !folder.equals(root) && Intake.isSomebodyElses(folder);
            return passed ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes about) {
            if (Intake.isSomebodyElses(file) || isWord(file)) {
                return FileVisitResult.CONTINUE;
            }
            if (++seen > MOST) {
                aside.add(new Aside("", "more than " + MOST + " files; the others are not seen"));
                return FileVisitResult.TERMINATE;
            }
            take(file, about);
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException failure) {
            aside.add(new Aside(name(file), "it cannot be opened"));
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult postVisitDirectory(Path folder, IOException failure) {
            if (failure != null) {
                aside.add(new Aside(name(folder), "the folder cannot be read to its end"));
            }
            return FileVisitResult.CONTINUE;
        }

        private void take(Path file, BasicFileAttributes about) {
            String name = name(file);
            if (!about.isRegularFile()) {
                aside.add(
                        new Aside(
                                name,
                                about.isDirectory()
                                        ? "it lies deeper than " + DEEPEST + " folders"
                                        : "a link or device, which is not followed"));
            } else if (about.size() > MOST_BYTES) {
                aside.add(new Aside(name, "larger than " + MOST_BYTES / 1_000_000 + " MB"));
            } else {
                put(new JobFile(file, name, JobFile.Kind.of(file), about.size()));
            }
        }

        private void put(JobFile file) {
            Set<String> jobs = jobs(file.path());
            if (jobs.size() != 1) {
                aside.add(
                        new Aside(
                                file.name(),
                                jobs.isEmpty()
                                        ? "neither its name nor its folder's is a job number"
                                        : "names tell of several jobs: "
                                                + String.join(", ", jobs)));
                return;
            }
            files.computeIfAbsent(Keys.job(jobs.iterator().next()), j -> new ArrayList<>())
                    .add(file);
        }

        /** A file in the folder of one job with the number of another is of neither. */
        private Set<String> jobs(Path file) {
            Set<String> jobs = new TreeSet<>();
            root.relativize(file).forEach(part -> jobs.addAll(names.in(part.toString())));
            return jobs;
        }

        private String name(Path file) {
            return root.relativize(file).toString().replace('\\', '/');
        }
    }
}
