package paperbark.output.paper;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private Judge() {}

    /**
     * What a document breaks of PDF/UA-1; empty where it conforms.
     *
     * @param pdf the document
     */
    public static Set<String> accessible(byte[] pdf) {
        return broken(pdf, PDFAFlavour.PDFUA_1);
    }

    /**
     * What a document breaks of PDF/A-2a; empty where it conforms.
     *
     * @param pdf the document
     */
    public static Set<String> archivable(byte[] pdf) {
        return broken(pdf, PDFAFlavour.PDFA_2_A);
    }

    /** What a document says of itself in its metadata packet. */
    public static String packet(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new String(
                    document.getDocumentCatalog().getMetadata().toByteArray(),
                    StandardCharsets.UTF_8);
        }
    }

    private static Set<String> broken(byte[] pdf, PDFAFlavour flavour) {
        try (PDFAParser parser =
                        Foundries.defaultInstance()
                                .createParser(new ByteArrayInputStream(pdf), flavour);
                PDFAValidator validator =
                        Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
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
        } catch (IOException
                | EncryptedPdfException
                | ModelParsingException
                | ValidationException e) {
            throw new IllegalStateException(e);
        }
    }
}
