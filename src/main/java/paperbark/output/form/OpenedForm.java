package paperbark.output.form;

import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;

/**
 * A form opened for filling; refuses what cannot be filled truthfully: locked, signed and XFA-only
 * forms, and files that are no PDF.
 */
final class OpenedForm implements AutoCloseable {
    // Longer documents are brochures or slips; a pack is printed.
    private static final int MOST_PAGES = 30;

    private final PDDocument document;

    private OpenedForm(PDDocument document) {
        this.document = document;
    }

    /**
     * Opens a copy.
     *
     * @param file its name for findings
     * @param pdf the form as the buyer gave it
     * @throws UnusableForm with one finding that says why it cannot be filled
     */
    static OpenedForm of(String file, byte[] pdf) throws UnusableForm {
        if (pdf.length > FormFolder.LARGEST) {
            throw UnusableForm.because(
                    file,
                    FormFolder.tooLarge(file, pdf.length),
                    "Save it anew in its usual size, or ask the buyer for it again.");
        }
        Unpacking.check(file, pdf);
        PDDocument document = load(file, pdf);
        try {
            check(file, document);
            return new OpenedForm(document);
        } catch (UnusableForm e) {
            close(document);
            throw e;
        } catch (RuntimeException | StackOverflowError e) {
            close(document);
            throw damaged(file);
        }
    }

    /**
     * Opens another copy of a form that was not refused.
     *
     * @throws UnusableForm when it cannot be opened after all
     */
    static OpenedForm again(String file, byte[] pdf) throws UnusableForm {
        return new OpenedForm(load(file, pdf));
    }

    private static PDDocument load(String file, byte[] pdf) throws UnusableForm {
        try {
            return Loader.loadPDF(pdf);
        } catch (InvalidPasswordException | LinkageError e) {
            // Forms locked for somebody's certificate need a library that is not here.
            throw locked(file);
        } catch (IOException | RuntimeException | StackOverflowError e) {
            throw damaged(file);
        }
    }

    private static void check(String file, PDDocument document) throws UnusableForm {
        if (document.isEncrypted()) {
            throw locked(file);
        }
        int said = document.getNumberOfPages();
        int pages = 0;
        for (PDPage page : document.getPages()) {
            pages += page == null ? 0 : 1;
        }
        if (pages == 0 || pages > MOST_PAGES) {
            throw UnusableForm.because(
                    file,
                    "The form has " + pages + " pages; 1 to " + MOST_PAGES + " can be filled.",
                    "Keep only the pages that go into the pack.");
        }
        if (pages != said) {
            throw UnusableForm.because(
                    file,
                    "The form says that it has " + said + " pages, and has " + pages + ".",
                    "Open it in a PDF reader and save it anew, or ask the buyer for it again.");
        }
        Unpacking.check(file, document);
        Optional<PDAcroForm> fields = fields(document);
        if (fields.isPresent() && fields.get().hasXFA() && fields.get().getFields().isEmpty()) {
            throw UnusableForm.because(
                    file,
                    "The form is made of XFA, which PDF readers no longer show, and has no fields of"
                            + " the usual kind.",
                    "Ask the buyer for a form with AcroForm fields, or print it to a PDF without"
                            + " fields.");
        }
        if (fields.isPresent() && isSigned(fields.get())) {
            throw UnusableForm.because(
                    file,
                    "The form is signed electronically, and filling it would break the signature.",
                    "Ask the buyer for the form without a signature.");
        }
    }

    private static boolean isSigned(PDAcroForm fields) {
        for (PDField field : fields.getFieldTree()) {
            if (field instanceof PDSignatureField signature && signature.getValue() != null) {
                return true;
            }
        }
        return false;
    }

    private static UnusableForm locked(String file) {
        return UnusableForm.because(
                file,
                "The form is encrypted.",
                "Ask the buyer for the form without a password and without restrictions.");
    }

    static UnusableForm damaged(String file) {
        return UnusableForm.because(
                file,
                "The file is damaged or is no PDF.",
                "Get the form again, or open it in a PDF reader and save it anew.");
    }

    /** The document, to be changed at will. */
    PDDocument document() {
        return document;
    }

    /** The fields, where the form has any. */
    Optional<PDAcroForm> fields() {
        return fields(document).filter(form -> !form.getFields().isEmpty());
    }

    private static Optional<PDAcroForm> fields(PDDocument document) {
        // Without the fixup, which would replace fonts and appearances by those of the machine.
        return Optional.ofNullable(document.getDocumentCatalog().getAcroForm(null));
    }

    @Override
    public void close() {
        close(document);
    }

    private static void close(PDDocument document) {
        try {
            document.close();
        } catch (IOException e) {
            // Only memory was held.
        }
    }
}
