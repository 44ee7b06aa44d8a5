package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The order of the print run, read off the covers as they come out of the printer. */
class RouteOrderTest {
    private static final Pattern COVER =
            Pattern.compile(
                    "Cover and checklist Job (\\S+) Batch .* Planned visit(.*?) Crew, order of visit(.*?)"
                            + " Maker .*Cover and checklist: page 1 of ");
    private static final Pattern CREW = Pattern.compile("(\\D*?),? ?(\\d*)");
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMM yyyy", Locale.UK);

    private record Stop(String crew, LocalDate day, int order, String job) {
        static Stop of(Matcher cover) {
            String day = cover.group(2).strip();
            Matcher crew = CREW.matcher(cover.group(3).strip());
            assertThat(crew.matches()).as(cover.group(3)).isTrue();
            return new Stop(
                    crew.group(1).isEmpty() ? "\uffff" : crew.group(1),
                    day.isEmpty() ? LocalDate.MAX : LocalDate.parse(day, DAY),
                    crew.group(2).isEmpty() ? Integer.MAX_VALUE : Integer.parseInt(crew.group(2)),
                    cover.group(1));
        }
    }

    @Test
    void packsComeByCrewDayPlaceInTheRouteAndJob() throws IOException {
        Path batch = SampleWeek.published();
        List<Stop> stops = new ArrayList<>();
        List<Stop> apart = new ArrayList<>();
        try (PDDocument run = Loader.loadPDF(batch.resolve("print-run.pdf").toFile())) {
            for (PDOutlineItem job : jobs(run)) {
                int page = run.getPages().indexOf(job.findDestinationPage(run)) + 1;
                assertThat(page % 2).as("front of a sheet").isEqualTo(1);
                Matcher cover = COVER.matcher(text(run, page));
                assertThat(cover.find()).as(job.getTitle()).isTrue();
                assertThat(cover.group(1)).isEqualTo(job.getTitle());
                boolean held = text(run, page).contains("■ STOP");
                (held ? apart : stops).add(Stop.of(cover));
                assertThat(apart.isEmpty() || held).as("held ones last").isTrue();
                assertThat(text(run, page))
                        .contains("Job " + (stops.size() + apart.size()) + " of 40");
            }
        }
        assertThat(stops).hasSize(27);
        assertThat(apart).hasSize(13);
        assertThat(stops.stream().map(Stop::crew).distinct()).hasSizeGreaterThan(2);
        assertThat(stops).extracting(Stop::order).contains(1, 2, 3);
        assertThat(stops)
                .isSortedAccordingTo(
                        Comparator.comparing(Stop::crew)
                                .thenComparing(Stop::day)
                                .thenComparing(Stop::order)
                                .thenComparing(Stop::job));
    }

    @Test
    void bookmarksGoByCrewThenJob() throws IOException {
        try (PDDocument run =
                Loader.loadPDF(SampleWeek.published().resolve("print-run.pdf").toFile())) {
            List<String> groups = new ArrayList<>();
            run.getDocumentCatalog()
                    .getDocumentOutline()
                    .children()
                    .forEach(group -> groups.add(group.getTitle()));
            assertThat(groups)
                    .containsExactly(
                            "Crew Egret", "Crew Heron", "Crew Spoonbill", "No crew", "Held");
        }
    }

    /** "388 sheets for 40 jobs" was measured before papers that are kept together shared sheets. */
    @Test
    void theWeekNeedsAtMost290Sheets() throws IOException {
        try (PDDocument run =
                Loader.loadPDF(SampleWeek.published().resolve("print-run.pdf").toFile())) {
            assertThat(run.getNumberOfPages() / 2).isLessThanOrEqualTo(290);
        }
    }

    private static List<PDOutlineItem> jobs(PDDocument run) {
        List<PDOutlineItem> jobs = new ArrayList<>();
        for (PDOutlineItem group : run.getDocumentCatalog().getDocumentOutline().children()) {
            group.children().forEach(jobs::add);
        }
        return jobs;
    }

    private static String text(PDDocument run, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(run).replaceAll("\\s+", " ");
    }
}
