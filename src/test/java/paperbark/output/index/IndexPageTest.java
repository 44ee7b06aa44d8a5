package paperbark.output.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.BatchView;
import paperbark.output.BatchViews;
import paperbark.output.CaseFile;
import paperbark.output.Jobs;
import paperbark.output.ToDo;
import paperbark.output.table.JobStatus;

class IndexPageTest {
    private static final String WEEK = BatchViews.page(BatchViews.week());

    @Test
    void everyLinkLeadsToAFileOfTheBatchOrAPlaceOnThePage() {
        Set<String> known =
                new TreeSet<>(Set.of("print-run.pdf", "summary.xlsx", "register-checked.xlsx"));
        BatchViews.week().cases().forEach(c -> known.add("packs/" + c.packFile()));
        all("id=\"([^\"]*)\"", WEEK).forEach(id -> known.add("#" + id));
        List<String> links = all("href=\"([^\"]*)\"", WEEK);
        assertThat(links).hasSizeGreaterThan(12);
        assertThat(known).containsAll(links);
        BatchViews.week().cases().forEach(c -> assertThat(links).contains("packs/" + c.packFile()));
    }

    @Test
    void everyAnchorIsThereOnceEvenWhenTwoJobsShareANumber() {
        Jobs twin = new Jobs("SB-1", "Fern Placeholder", "Ballan");
        String page =
                BatchViews.page(BatchViews.of(true, List.of(twin.caseFile(), twin.caseFile())));
        List<String> ids = all("id=\"([^\"]*)\"", page);
        assertThat(ids).doesNotHaveDuplicates().contains("job-1", "job-2");
    }

    /** Longer than any paper may be: the page is our own, and as long as the register. */
    @Test
    void aRegisterOfEightThousandJobsHasItsPage() {
        List<CaseFile> many = new ArrayList<>();
        for (int i = 0; i < 8_000; i++) {
            many.add(
                    new Jobs("SB-" + i, "Fern Placeholder", "Ballan")
                            .installed(LocalDate.of(2026, 11, 16))
                            .stc(14, "Kestrel Certificates", "36.00")
                            .caseFile());
        }
        String page = BatchViews.page(BatchViews.of(true, many));
        assertThat(page.length()).isGreaterThan(4_000_000);
        assertThat(page).contains("id=\"job-8000\"").endsWith("</html>\n");
    }

    @Test
    void holdsOneScriptThatItsPolicyNamesAndNothingFromTheNetwork() throws Exception {
        List<String> scripts = all("(?s)<script>(.*?)</script>", WEEK);
        assertThat(scripts).hasSize(1);
        String print =
                Base64.getEncoder()
                        .encodeToString(
                                MessageDigest.getInstance("SHA-256")
                                        .digest(scripts.get(0).getBytes(StandardCharsets.UTF_8)));
        assertThat(WEEK)
                .contains(
                        "content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:;"
                                + " script-src 'sha256-"
                                + print
                                + "'; base-uri 'none'; form-action 'none'\"")
                .doesNotContain("http://", "https://", "javascript:", "@import", "url(")
                .doesNotContainPattern("\\son[a-z]+=");
    }

    @Test
    void hostileTextIsShownAsText() {
        String hostile = "<script>alert(1)</script>\"' onload=x ${firm} &amp;";
        BatchView view =
                BatchViews.of(
                        true,
                        List.of(
                                new Jobs(hostile, hostile, hostile)
                                        .toDo(new ToDo(hostile, hostile, Optional.empty()))
                                        .finding(
                                                Finding.of(
                                                                FindingCode.FACT_MISSING,
                                                                BatchViews.cell(4, hostile, "C4"),
                                                                hostile,
                                                                hostile)
                                                        .seeing(hostile))
                                        .caseFile()));
        String page = BatchViews.page(view);
        assertThat(page)
                .doesNotContain("<script>alert")
                .doesNotContain("\"' onload")
                .contains(
                        "&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39; onload=x ${firm}"
                                + " &amp;amp;");
    }

    @Test
    void showsCountsMoneyAndFindings() {
        assertThat(text(WEEK))
                .contains("Jobs 5 1 held")
                .contains("STCs 51 17 of them only booked, 13 more held")
                .contains("VEECs 22 18 more held")
                .contains(
                        "Money expected $3,345.56 net of fees, $598.70 of it only booked, $1,721.89 more held")
                .contains("1 stop 3 checks 1 note");
    }

    @Test
    void aJobShowsItsStatusInWordsBesideTheShape() {
        assertThat(WEEK)
                .contains("<span class=\"mark ready\" aria-hidden=\"true\"></span>ready</span>")
                .contains("</span>ready, look at it</span>")
                .contains(
                        "<span class=\"mark held\" aria-hidden=\"true\"></span>held</span><br>"
                                + "<small>Warranty registration");
    }

    @Test
    void showsWhatIsMissingAndTheNearestClosingDate() {
        assertThat(text(WEEK))
                .contains("installer: Tank serial")
                .contains("Plumbing compliance certificate number (by 2 Dec 2026)")
                .contains("7 Dec 2026 12 days left Create STCs SB-1043")
                .contains("7 Dec 2026 create STCs, 12 days left");
    }

    @Test
    void namesTheOwnerSuburbAndTelephoneButNoEmail() {
        assertThat(WEEK)
                .contains("Maree Sample, Gordon")
                .contains(Jobs.PHONE)
                .doesNotContain("owner@example.com")
                .doesNotContain("5550 12<")
                .contains("(not shown on this page)")
                .contains("area code, e.g. 03 5550 1234.")
                .doesNotContain("Heron Lane");
    }

    @Test
    void aPrivateValueIsTakenOutOfTheSentenceToo() {
        Finding finding =
                Finding.of(
                                FindingCode.CELL_UNREADABLE,
                                BatchViews.cell(4, "Phone", "E4"),
                                "The cell shows 0491570156 and cannot be used.",
                                "Type 0491570156 as text.")
                        .seeing("0491570156");
        String page =
                BatchViews.page(
                        BatchViews.of(
                                true,
                                List.of(
                                        new Jobs("SB-1", "Fern Placeholder", "Ballan")
                                                .finding(finding)
                                                .caseFile())));
        assertThat(page).contains("The cell shows (not shown").doesNotContain("0491570156");
    }

    @Test
    void aHeldJobComesFirstAndSaysWhatToMendAndNeverThatNothingIsMissing() {
        String rows = WEEK.substring(WEEK.indexOf("<tr role=\"row\" id=\"job-"));
        String first = rows.substring(0, rows.indexOf("</tr>"));

        assertThat(first)
                .contains("</span>held</span>", "To be mended:")
                .doesNotContain(">nothing<");
        assertThat(rows.indexOf("</span>held</span>"))
                .isLessThan(rows.indexOf("</span>ready</span>"));
    }

    @Test
    void aJobToLookAtSaysWhatItsChecksAskForAndNeverThatNothingIsToDo() {
        Jobs job = new Jobs("SB-1", "Fern Placeholder", "Ballan");
        for (int i = 1; i <= 4; i++) {
            job.finding(
                    Finding.of(
                            FindingCode.SERIAL_LIKE_CLAIMED,
                            BatchViews.cell(4, "Tank serial", "C4"),
                            "Fact " + i + ".",
                            "Remedy " + i + "."));
        }
        String page = BatchViews.page(BatchViews.of(true, List.of(job.caseFile())));
        String row = page.substring(page.indexOf("<tr role=\"row\" id=\"job-1\""));
        row = row.substring(0, row.indexOf("</tr>"));

        assertThat(row)
                .contains("</span>ready, look at it</span>", "To be looked at:")
                .contains("Remedy 1.", "Remedy 3.", "and 1 more, with its findings")
                .doesNotContain("Remedy 4.", "nothing");
    }

    @Test
    void leadsFromEachProblemToTheNextAndFromTheTopToTheFirst() {
        List<String> way = all("(?:First|Next) problem: (SB-[0-9]+)", WEEK);

        assertThat(way).hasSizeGreaterThan(1).doesNotHaveDuplicates();
        assertThat(WEEK.substring(0, WEEK.indexOf("</nav>")))
                .contains("First problem: " + way.get(0));
        assertThat(way)
                .hasSize(
                        (int)
                                BatchViews.week().cases().stream()
                                        .filter(c -> JobStatus.of(c) != JobStatus.READY)
                                        .count());
    }

    @Test
    void listsTheJobsOfEachCrewAndWhomToRing() {
        assertThat(text(WEEK)).containsSubsequence("By crew", "SB-1041", "Whom to ring", "SB-1041");
    }

    @Test
    void saysSoWhenAnInventedFigureWentIn() {
        assertThat(WEEK).contains("invented for the demonstration. They must not be used");
        String plain =
                BatchViews.page(
                        BatchViews.of(
                                true,
                                List.of(
                                        new Jobs("SB-1", "Fern Placeholder", "Ballan")
                                                .installed(LocalDate.of(2026, 11, 20))
                                                .stc(13, "Kestrel Certificates", "36.10")
                                                .caseFile())));
        assertThat(plain).doesNotContain("They must not be used");
    }

    @Test
    void anEmptyBatchStillGivesAPage() {
        assertThat(text(BatchViews.page(BatchViews.of(true, List.of())))).contains("Jobs 0 0 held");
    }

    @Test
    void headingsOfTablesSayWhatTheyHead() {
        assertThat(all("<th ([^>]*)>", WEEK)).isNotEmpty().allMatch(a -> a.contains("scope="));
        assertThat(WEEK).contains("<html lang=\"en-AU\">");
    }

    private static List<String> all(String pattern, String page) {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile(pattern).matcher(page);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    private static String text(String page) {
        return page.replaceAll("(?s)<style>.*?</style>", "")
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ");
    }
}
