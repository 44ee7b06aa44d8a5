package paperbark.output.paper;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;

/**
 * How long each stage of a pack takes on average of the sample jobs, with all papers drawn, and
 * with those shown that are known. Java is started as the launcher starts it. Run by {@code mvn
 * -Pbench verify}; on a busy machine read the ratios of one run.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@OperationsPerInvocation(StagedPapers.JOBS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xmx512m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"})
@Warmup(iterations = 2, time = 1)
@Measurement(time = 1)
public class StageBench {
    private final List<CaseFile> jobs = StagedPapers.jobs();

    /** Measures and prints. */
    public static void main(String[] arguments) throws RunnerException {
        new Runner(
                        new OptionsBuilder()
                                .include(StageBench.class.getName())
                                .measurementIterations(Integer.getInteger("bench.rounds", 5))
                                .shouldFailOnError(true)
                                .build())
                .run();
    }

    /** The facts of a job as its templates see them. */
    @Benchmark
    public void facts(StageInputs.Texts texts, Blackhole out) {
        jobs.forEach(job -> out.consume(texts.papers.facts(job, false)));
    }

    /** The templates of a pack, filled in. */
    @Benchmark
    public void fillingIn(StageInputs.Texts texts, Blackhole out) throws BrokenTemplate {
        for (int i = 0; i < jobs.size(); i++) {
            out.consume(texts.papers.fill(jobs.get(i), texts.facts.get(i)));
        }
    }

    /** The markup of a pack, read as XML. */
    @Benchmark
    public void readingMarkup(StageInputs.Texts texts, Blackhole out) throws BrokenTemplate {
        for (StagedPapers.Filled paper : texts.filled) {
            out.consume(texts.papers.read(paper.content(), paper.template()));
            out.consume(texts.papers.read(paper.running(), PaperWriter.RUNNING));
        }
    }

    /** The markup of a pack, taken apart. */
    @Benchmark
    public void takingApart(StageInputs.Texts texts, Blackhole out) {
        texts.filled.forEach(paper -> out.consume(TagsAndWords.of(paper.content())));
    }

    /** What is known of the papers of a pack. */
    @Benchmark
    public void foreseeing(
            StageInputs.Texts texts, StageInputs.Wordings wordings, Blackhole out) {
        for (int i = 0; i < texts.filled.size(); i++) {
            String template = texts.filled.get(i).template();
            out.consume(texts.papers.foresee(template, wordings.all.get(i)));
        }
    }

    /** Layout and drawing. */
    @Benchmark
    public void layingOut(StageInputs.Markups markups, StageInputs.Kind kind, Blackhole out)
            throws IOException {
        List<StagedPapers.Drawn> packs = markups.draw(kind);
        out.consume(packs);
        StagedPapers.close(packs);
    }

    /** Drawn pages made small, known ones put in their places. */
    @Benchmark
    public void makingSmall(StageInputs.Drawn drawn) throws IOException {
        for (StagedPapers.Drawn pack : drawn.packs) {
            pack.slim();
        }
    }

    /** The document as a file. */
    @Benchmark
    public void writing(StageInputs.Small small, Blackhole out) throws IOException {
        for (StagedPapers.Drawn pack : small.packs) {
            out.consume(pack.written());
        }
    }

    /** All of these and what lies between them. */
    @Benchmark
    public void wholePack(StageInputs.Whole whole, Blackhole out) {
        jobs.forEach(job -> out.consume(whole.packs.make(job, List.of())));
    }

    /** A pack's share of a print run. */
    @Benchmark
    @OperationsPerInvocation(StageInputs.RUN)
    public void printRun(StageInputs.Filed packs) throws IOException {
        PrintRun.write(
                packs.run,
                Optional.empty(),
                Optional.empty(),
                jobs.get(0).batch(),
                OutputStream.nullOutputStream());
    }
}
