package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.NodeList;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.TemplateEngine;

/**
 * The words that Competition and Consumer Regulations 2010, regulation 90(2) to (4), prescribes for
 * a warranty against defects, byte for byte.
 */
class WordingTest {
    private static final List<String> BOTH =
            List.of(
                    "Our goods and services come with guarantees that cannot be excluded under the"
                            + " Australian Consumer Law. For major failures with the service, you"
                            + " are entitled:",
                    "to cancel your service contract with us; and",
                    "to a refund for the unused portion, or to compensation for its reduced value.",
                    "You are also entitled to choose a refund or replacement for major failures"
                            + " with goods. If a failure with the goods or a service does not"
                            + " amount to a major failure, you are entitled to have the failure"
                            + " rectified in a reasonable time. If this is not done you are"
                            + " entitled to a refund for the goods and to cancel the contract for"
                            + " the service and obtain a refund of any unused portion. You are also"
                            + " entitled to be compensated for any other reasonably foreseeable"
                            + " loss or damage from a failure in the goods or service.");
    private static final List<String> GOODS =
            List.of(
                    "Our goods come with guarantees that cannot be excluded under the Australian"
                            + " Consumer Law. You are entitled to a replacement or refund for a"
                            + " major failure and compensation for any other reasonably foreseeable"
                            + " loss or damage. You are also entitled to have the goods repaired or"
                            + " replaced if the goods fail to be of acceptable quality and the"
                            + " failure does not amount to a major failure.");
    private static final List<String> SERVICES =
            List.of(
                    "Our services come with guarantees that cannot be excluded under the Australian"
                            + " Consumer Law. For major failures with the service, you are"
                            + " entitled:",
                    "to cancel your service contract with us; and",
                    "to a refund for the unused portion, or to compensation for its reduced value.",
                    "You are also entitled to be compensated for any other reasonably foreseeable"
                            + " loss or damage. If the failure does not amount to a major failure"
                            + " you are entitled to have problems with the service rectified in a"
                            + " reasonable time and, if this is not done, to cancel your contract"
                            + " and obtain a refund for the unused portion of the contract.");

    /** All of the words, each wording as one text, which no other test may ask to be changed. */
    static final List<String> PRESCRIBED =
            Stream.of(BOTH, GOODS, SERVICES).map(lines -> String.join(" ", lines)).toList();

    @Test
    void partsHoldTheWordingByteForByte() throws Exception {
        assertThat(texts("both")).isEqualTo(BOTH);
        assertThat(texts("goods")).isEqualTo(GOODS);
        assertThat(texts("services")).isEqualTo(SERVICES);
    }

    @Test
    void handoverPrintsTheFirmsAndTheMakersWordingEachWholeOnOnePage() {
        for (CaseFile caseFile :
                List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump(), CaseFiles.bare())) {
            Pack pack = new Packs(Optional.empty()).make(caseFile, List.of());
            List<String> pages =
                    IntStream.rangeClosed(1, PdfText.pages(pack))
                            .mapToObj(page -> PdfText.of(pack.pdf(), page, page))
                            .map(text -> text.replace("• ", ""))
                            .toList();

            assertThat(pages).anyMatch(page -> page.contains(String.join(" ", BOTH)));
            assertThat(pages).anyMatch(page -> page.contains(GOODS.get(0)));
        }
    }

    private static List<String> texts(String macro) throws BrokenTemplate, IOException {
        Path folder = Files.createTempDirectory("wording");
        Files.writeString(
                folder.resolve("one.ftlh"),
                "<#import \"/acl-wording.ftlh\" as acl><@acl." + macro + "/>");
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));
        String markup = engine.render("one.ftlh", Map.of());
        NodeList all = Markup.parse(markup, "one.ftlh", engine).getElementsByTagName("*");
        return IntStream.range(0, all.getLength())
                .mapToObj(all::item)
                .filter(n -> n.getNodeName().matches("p|li"))
                .map(n -> n.getTextContent())
                .toList();
    }
}
