package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDChoice;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import paperbark.output.paper.FormId;

/**
 * A sheet with live fields that came back.
 *
 * @param id which sheet it is
 * @param typed what was typed by the key of the fact, in no order; boxes that are empty are absent
 */
public record FilledForm(FormId id, Map<String, String> typed) {
    private static final int LONGEST = 1000;

    /** Keeps the map from being changed. */
    public FilledForm {
        typed = Map.copyOf(typed);
    }

    /**
     * Reads a file.
     *
     * @return empty where it is no sheet of this kind, or cannot be opened at all
     * @throws UnreadablePile when it is one, and what was typed cannot be read
     */
    public static Optional<FilledForm> of(Path file) throws UnreadablePile {
        if (!file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".pdf")) {
            return Optional.empty();
        }
        try (PDDocument document = Loader.loadPDF(new RandomAccessReadBufferedFile(file))) {
            return of(document);
        } catch (UnreadablePile told) {
            throw told;
        } catch (IOException | RuntimeException damaged) {
            // Whoever reads it as a pile says so.
            return Optional.empty();
        }
    }

    private static Optional<FilledForm> of(PDDocument document) throws UnreadablePile {
        PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
        PDField said = form == null ? null : form.getField(FormId.NAME);
        if (said == null) {
            if (document.getDocumentInformation().getCustomMetadataValue(FormId.NAME) != null) {
                throw new UnreadablePile(
                        "The sheet was to be filled in, and its fields are part of its pages now.",
                        "Save it from the tablet as it is, without \"flatten\" or \"print\", or type what it shows into the register.");
            }
            return Optional.empty();
        }
        FormId id =
                FormId.parse(said.getValueAsString())
                        .orElseThrow(
                                () ->
                                        new UnreadablePile(
                                                "The sheet does not say of which job and register it is, as this version of the program asks for it.",
                                                "Type what it shows into the register."));
        return Optional.of(new FilledForm(id, typed(form, id)));
    }

    /** Several boxes of one fact are read in their order, as one cell of the register has them. */
    private static Map<String, String> typed(PDAcroForm form, FormId id) throws UnreadablePile {
        Map<String, String> boxes = new TreeMap<>();
        for (PDField field : form.getFieldTree()) {
            if (field instanceof PDTerminalField) {
                String text = text(field);
                if (!text.isEmpty()) {
                    boxes.put(field.getFullyQualifiedName(), text);
                }
            }
        }
        Map<String, String> typed = new LinkedHashMap<>();
        boxes.forEach(
                (name, text) ->
                        id.key(name)
                                .ifPresent(key -> typed.merge(key, text, (a, b) -> a + "; " + b)));
        return typed;
    }

    private static String text(PDField field) throws UnreadablePile {
        String text =
                field instanceof PDChoice choice
                        ? String.join("; ", choice.getValue())
                        : field.getValueAsString();
        String plain = text.replaceAll("[\\p{Cntrl}\\s\\u00A0]+", " ").strip();
        if (plain.length() > LONGEST) {
            throw new UnreadablePile(
                    "A box of the sheet holds more than " + LONGEST + " letters.",
                    "Type what it shows into the register.");
        }
        return plain;
    }
}
