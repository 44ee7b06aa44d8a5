package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Node;
import org.w3c.dom.Text;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;

/** Markup taken apart has the words that the XML reader of the JDK finds. */
class TagsAndWordsTest {
    @Test
    void takesWordsOutOfTheirTags() {
        TagsAndWords wording =
                TagsAndWords.of("<p class=\"a>b\">Ann &amp; Bea<br/> <b>M&#252;ller</b>&#x41; </p>")
                        .orElseThrow();

        assertThat(wording.words()).containsExactly("Ann & Bea", "M\u00FCller", "A ");
        assertThat(wording.tags()).isEqualTo("<p class=\"a>b\">\1\1<br/> <b>\1\1</b>\1\2</p>");
    }

    @Test
    void tellsApartWhatHasSpaceAroundIt() {
        assertThat(tags("<p>Ann<b>Bea</b></p>")).isNotEqualTo(tags("<p>Ann <b>Bea</b></p>"));
        assertThat(tags("<p>Ann</p>")).isEqualTo(tags("<p>Bea Plover</p>"));
        assertThat(tags("<p>Ann</p>")).isNotEqualTo(tags("<p></p>"));
        assertThat(tags("<p id='a'>Ann</p>")).isNotEqualTo(tags("<p id='b'>Ann</p>"));
    }

    private static String tags(String markup) {
        return TagsAndWords.of(markup).orElseThrow().tags();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<p>&unknown;</p>",
                "<p>a &b</p>",
                "<p>&#10;</p>",
                "<p>&#x110000;</p>",
                "<p><![CDATA[a]]></p>",
                "<?pi a?>",
                "<p",
                "<!-- open",
                "<"
            })
    void leavesTheRestToTheReader(String markup) {
        assertThat(TagsAndWords.of(markup)).isEmpty();
    }

    @Test
    void findsTheWordsThatAReaderOfXmlFinds() throws Exception {
        TemplateEngine engine = new TemplateEngine(Optional.empty());
        for (CaseFile job :
                List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump(), CaseFiles.bare())) {
            PaperWriter writer =
                    new PaperWriter(
                            engine,
                            engine,
                            job,
                            Logo.of(Optional.empty(), RunLimit.USUAL),
                            Optional.of(new PaperMemory()));
            for (Paper paper : job.papers()) {
                PaperMarkup markup = writer.write(paper);
                if (markup.wording().isPresent()) {
                    assertThat(markup.wording().get().words())
                            .as(paper.title())
                            .isNotEmpty()
                            .isEqualTo(words(markup.content()));
                }
            }
        }
    }

    private static List<String> words(Node node) {
        List<String> all = new ArrayList<>();
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Text text && !text.getData().isBlank()) {
                all.add(text.getData());
            }
            all.addAll(words(child));
        }
        return all;
    }
}
