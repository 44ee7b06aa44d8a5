package paperbark.output.paper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;

/** What the stages of {@link StageBench} begin with. */
public final class StageInputs {
    /** So many packs are in a print run. */
    static final int RUN = 12;

    private StageInputs() {}

    /** Whether papers that are known are drawn nevertheless. */
    @State(Scope.Benchmark)
    public static class Kind {
        /** Either {@code drawn} or {@code known}. */
        @Param({"drawn", "known"})
        public String papers;

        boolean isKnown() {
            return papers.equals("known");
        }
    }

    /** Facts and filled templates of the jobs. */
    @State(Scope.Benchmark)
    public static class Texts {
        final StagedPapers papers = new StagedPapers();
        final List<PaperWriter> facts = new ArrayList<>();
        final List<StagedPapers.Filled> filled = new ArrayList<>();

        /** Fills the templates in. */
        @Setup
        public void fill() throws BrokenTemplate {
            for (CaseFile job : StagedPapers.jobs()) {
                PaperWriter own = papers.facts(job, false);
                facts.add(own);
                filled.addAll(papers.fill(job, own));
            }
        }
    }

    /** Papers taken apart, all of which are known but the covers. */
    @State(Scope.Benchmark)
    public static class Wordings {
        final List<TagsAndWords> all = new ArrayList<>();

        /** Lets the papers become known. */
        @Setup
        public void learn(Texts texts) throws IOException {
            texts.papers.learn();
            texts.filled.forEach(f -> all.add(TagsAndWords.of(f.content()).orElseThrow()));
        }
    }

    /** The markup of the jobs, which any number of layouts can take. */
    @State(Scope.Benchmark)
    public static class Markups {
        private final StagedPapers papers = new StagedPapers();
        private final List<List<PaperMarkup>> all = new ArrayList<>();

        /** Makes the markup. */
        @Setup
        public void prepare(Kind kind) throws IOException {
            if (kind.isKnown()) {
                papers.learn();
            }
            StagedPapers.jobs().forEach(job -> all.add(papers.markup(job, kind.isKnown())));
        }

        List<StagedPapers.Drawn> draw(Kind kind) throws IOException {
            List<CaseFile> jobs = StagedPapers.jobs();
            List<StagedPapers.Drawn> packs = new ArrayList<>();
            for (int i = 0; i < jobs.size(); i++) {
                packs.add(papers.draw(jobs.get(i), all.get(i), kind.isKnown()));
            }
            return packs;
        }
    }

    /** Packs that are drawn, new ones each time. */
    @State(Scope.Benchmark)
    public static class Drawn {
        List<StagedPapers.Drawn> packs = List.of();

        /** Draws them. */
        @Setup(Level.Invocation)
        public void draw(Markups markups, Kind kind) throws IOException {
            packs = markups.draw(kind);
        }

        /** Closes them. */
        @TearDown(Level.Invocation)
        public void close() throws IOException {
            StagedPapers.close(packs);
        }
    }

    /** Packs with small pages, new ones each time; a document is the same however it came about. */
    @State(Scope.Benchmark)
    public static class Small {
        private final StagedPapers papers = new StagedPapers();
        final List<StagedPapers.Drawn> packs = new ArrayList<>();

        /** Draws them and makes their pages small. */
        @Setup(Level.Invocation)
        public void slim() throws IOException {
            packs.clear();
            for (CaseFile job : StagedPapers.jobs()) {
                StagedPapers.Drawn pack = papers.draw(job, papers.markup(job, false), false);
                packs.add(pack);
                pack.slim();
            }
        }

        /** Closes them. */
        @TearDown(Level.Invocation)
        public void close() throws IOException {
            StagedPapers.close(packs);
        }
    }

    /** Makes whole packs. */
    @State(Scope.Benchmark)
    public static class Whole {
        Packs packs;

        /** Makes the packs of earlier jobs. */
        @Setup
        public void prepare(Kind kind) {
            System.setProperty("paperbark.draw-all", String.valueOf(!kind.isKnown()));
            packs = new Packs(Optional.empty());
            StagedPapers.earlierJobs().forEach(job -> packs.make(job, List.of()));
        }
    }

    /** Packs in files, for a print run. */
    @State(Scope.Benchmark)
    public static class Filed {
        final List<RunPack> run = new ArrayList<>();
        private Path folder;

        /** Makes and files them. */
        @Setup
        public void file() throws IOException {
            folder = Files.createTempDirectory("run");
            Packs packs = new Packs(Optional.empty());
            List<CaseFile> jobs = StagedPapers.jobs();
            for (int i = 0; i < RUN; i++) {
                CaseFile job = jobs.get(i % jobs.size());
                Path file = folder.resolve(i + ".pdf");
                Files.write(file, packs.make(job, List.of()).pdf());
                run.add(new RunPack(file, job.job().reference(), "Job " + (i + 1), "Crew Heron"));
            }
        }

        /** Takes the files away. */
        @TearDown
        public void remove() throws IOException {
            for (RunPack pack : run) {
                Files.delete(pack.file());
            }
            Files.delete(folder);
        }
    }
}
