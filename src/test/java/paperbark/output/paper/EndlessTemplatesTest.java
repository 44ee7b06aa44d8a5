package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.RunLimit;

/** Templates that do not end, in time, stack, memory or pages, hold their own paper alone. */
class EndlessTemplatesTest {
    private static final RunLimit SHORT = new RunLimit(Duration.ofSeconds(1));
    private static final CaseFile TWO_PAPERS =
            CaseFiles.withPapers(
                    CaseFiles.installedSolar(),
                    new Paper(PaperKind.COVER, "default", List.of()),
                    new Paper(PaperKind.OLD_HEATER, "default", List.of()));

    @TempDir Path folder;

    @BeforeAll
    static void warmUp() {
        new Packs(Optional.empty()).make(TWO_PAPERS, List.of());
    }

    private void template(String name, String... lines) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.write(file, List.of(lines), StandardCharsets.UTF_8);
    }

    private Pack pack(String... lines) throws IOException {
        template("old-heater/default.ftlh", lines);
        return new Packs(Optional.of(folder), SHORT).make(TWO_PAPERS, List.of());
    }

    private static Finding onlyFinding(Pack pack) {
        assertThat(PdfText.of(pack, PaperKind.OLD_HEATER)).contains("Held: Old-heater record");
        assertThat(PdfText.of(pack, PaperKind.COVER)).contains("The job at a glance");
        assertThat(pack.findings()).hasSize(1);
        Finding finding = pack.findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.TEMPLATE_BROKEN);
        assertThat(finding.job()).contains("SB-1032");
        return finding;
    }

    private static boolean isStillRunning() {
        Thread[] all = new Thread[Thread.activeCount() * 2];
        Thread.enumerate(all);
        return Arrays.stream(all).anyMatch(t -> t != null && t.getName().equals("paper"));
    }

    private static void waitUntilNoneRuns() throws InterruptedException {
        for (int i = 0; i < 100 && isStillRunning(); i++) {
            Thread.sleep(50);
        }
        assertThat(isStillRunning()).as("the loop must have been stopped").isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<#list 1.. as i><#assign x = i></#list>",
                "<#list 1.. as i><#list [] as j></#list></#list>",
                "<#macro m><#list 1.. as i><#assign x = i></#list></#macro><@m/>",
                "<#function f><#list 1.. as i><#assign x = i></#list><#return 1></#function>${f()}"
            })
    void aLoopThatPrintsNothingIsStoppedAndItsLineNamed(String loop) throws Exception {
        Pack pack = pack("<section>", loop, "</section>");

        Finding finding = onlyFinding(pack);
        assertThat(finding.fact()).isEqualTo("The template takes longer than 1 second.");
        Place.InTemplate place = (Place.InTemplate) finding.place();
        assertThat(place.file()).isEqualTo("old-heater/default.ftlh");
        assertThat(place.line()).isEqualTo(2);
        waitUntilNoneRuns();
    }

    @Test
    void aLoopInAnImportedPartIsStoppedThere() throws Exception {
        template("ours.ftlh", "<#macro m>", "<#list 1.. as i><#assign x = i></#list>", "</#macro>");
        Pack pack = pack("<#import \"/ours.ftlh\" as ours>", "<section><@ours.m/></section>");

        Place.InTemplate place = (Place.InTemplate) onlyFinding(pack).place();
        assertThat(place.file()).isEqualTo("ours.ftlh");
        assertThat(place.line()).isEqualTo(2);
        waitUntilNoneRuns();
    }

    @Test
    void aLoopThatCannotBeInterruptedIsLeftBehind() throws IOException {
        // One step of the template, of many seconds.
        Pack pack = pack("<#list (1..30000000)?filter(i -> i lt 0) as i>${i}</#list>");

        assertThat(onlyFinding(pack).fact()).contains("takes longer than");
    }

    @Test
    void afterTwoJobsTheRestDoesNotWait() throws IOException {
        template("old-heater/default.ftlh", "<#list 1.. as i><#assign x = i></#list>");
        Packs packs = new Packs(Optional.of(folder), SHORT);
        packs.make(TWO_PAPERS, List.of());
        packs.make(TWO_PAPERS, List.of());
        Pack third = packs.make(TWO_PAPERS, List.of());

        assertThat(onlyFinding(third).fact()).contains("ran out of time for 2 jobs");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<#macro m><@m/></#macro><@m/>",
                "<#function f x><#return f(x + 1)></#function>${f(1)}"
            })
    void aTemplateThatCallsItselfHoldsThatPaperAlone(String line) throws IOException {
        Pack pack = pack("<section>" + line + "</section>");

        assertThat(onlyFinding(pack).fact()).isEqualTo("The template calls itself without end.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<#assign x = \"x\"?left_pad(2147483647)>",
                "<#assign x = \"x\"?left_pad(1000000000)>"
            })
    void aTemplateThatEatsTheMemoryHoldsThatPaperAlone(String line) throws IOException {
        template("old-heater/default.ftlh", "<section>" + line + "</section>");
        Pack pack = new Packs(Optional.of(folder)).make(TWO_PAPERS, List.of());

        assertThat(onlyFinding(pack).fact()).contains("needs more memory than there is");
    }

    @Test
    void aPaperMayHaveAHundredPagesAndNoMore() throws IOException {
        String breaks = "<div style=\"page-break-after: always\">x</div>";
        template("cover/default.ftlh", "<section>", breaks.repeat(99) + "<p>y</p>", "</section>");
        template("old-heater/default.ftlh", "<section>", breaks.repeat(100), "<p>y</p></section>");
        Pack pack = new Packs(Optional.of(folder)).make(TWO_PAPERS, List.of());

        assertThat(pack.papers().get(0).pageCount()).isEqualTo(100);
        assertThat(pack.papers().get(1).pageCount()).isEqualTo(1);
        assertThat(pack.findings())
                .extracting(Finding::fact)
                .containsExactly("The paper takes 101 pages, where a paper has 100 at most.");
    }
}
