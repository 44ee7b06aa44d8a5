package paperbark.output.paper;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.verapdf.core.EncryptedPdfException;
import org.verapdf.core.ModelParsingException;
import org.verapdf.core.ValidationException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** An independent validator's word on a document. */
public final class Judge {
    private static final PDFAFlavour ACCESSIBLE = PDFAFlavour.PDFUA_1;
    private static final PDFAFlavour ARCHIVABLE = PDFAFlavour.PDFA_2_A;
    private static final List<PDFAFlavour> BOTH = List.of(ACCESSIBLE, ARCHIVABLE);

    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private Judge() {}

    /**
     * What a document breaks, by flavour; both are empty where it conforms.
     *
     * @param accessible what it breaks of PDF/UA-1
     * @param archivable what it breaks of PDF/A-2a
     */
    public record Verdict(Set<String> accessible, Set<String> archivable) {
        /** Nothing is broken. */
        public static final Verdict CONFORMS = new Verdict(Set.of(), Set.of());
    }

    /**
     * Holds a document against both flavours, reading it once.
     *
     * @param pdf the document, whatever it claims to be
     */
    public static Verdict of(byte[] pdf) {
        Map<PDFAFlavour, Set<String>> broken = new EnumMap<>(PDFAFlavour.class);
        try (PDFAParser parser =
                        Foundries.defaultInstance()
                                .createParser(new ByteArrayInputStream(pdf), ACCESSIBLE);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(BOTH)) {
            parser.setFlavours(BOTH);
            for (ValidationResult result : validator.validateAll(parser)) {
                broken.put(result.getPDFAFlavour(), broken(result));
            }
        } catch (IOException
                | EncryptedPdfException
                | ModelParsingException
                | ValidationException e) {
            throw new IllegalStateException(e);
        }
        if (!broken.keySet().equals(Set.copyOf(BOTH))) {
            throw new IllegalStateException("judged were only " + broken.keySet());
        }
        return new Verdict(broken.get(ACCESSIBLE), broken.get(ARCHIVABLE));
    }

    /** What a document says of itself in its metadata packet. */
    public static String packet(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new String(
                    document.getDocumentCatalog().getMetadata().toByteArray(),
                    StandardCharsets.UTF_8);
        }
    }

    private static Set<String> broken(ValidationResult result) {
        Set<String> broken = new TreeSet<>();
        for (TestAssertion assertion : result.getTestAssertions()) {
            if (assertion.getStatus() == TestAssertion.Status.FAILED) {
                broken.add(
                        assertion.getRuleId().getClause()
                                + "-"
                                + assertion.getRuleId().getTestNumber()
                                + " "
                                + assertion.getMessage()
                                + " at "
                                + assertion.getLocation().getContext());
            }
        }
        return broken;
    }
}
