package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.text.PDFTextStripper;
import paperbark.output.paper.FormId;

/** Offices that make site sheets with live fields, and what people do with those. */
final class FilledSheets {
    private FilledSheets() {}

    /** The register's row of a job that is booked, without anything that is known on site. */
    static String booked(int number) {
        return Offices.row(number, "")
                .replace(",installed,16/11/2026,", ",booked,,")
                .replace(
                        ",DEMO-%d,17/11/2026,DEMO-E%d,16/11/2026,".formatted(number, number),
                        ",,,,,");
    }

    /** The firm's own table says that such sheets are wanted. */
    static void want(Office office) throws IOException {
        Path firm = office.tables().resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm).stripTrailing() + "\nfillable sheets,yes\n");
    }

    /** Types into the fields of a sheet, by the key of the fact or the whole name. */
    static byte[] filled(Path sheet, String job, Map<String, String> facts) throws IOException {
        try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
            PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
            for (Map.Entry<String, String> fact : facts.entrySet()) {
                form.getField(job + "/" + fact.getKey()).setValue(fact.getValue());
            }
            return bytes(document);
        }
    }

    /** The same with its fields made part of the pages. */
    static byte[] flattened(byte[] sheet) throws IOException {
        try (PDDocument document = Loader.loadPDF(sheet)) {
            document.getDocumentCatalog().getAcroForm(null).flatten();
            return bytes(document);
        }
    }

    /** The same with a field under another name, as if the box had asked for another fact. */
    static byte[] renamed(byte[] sheet, String from, String to) throws IOException {
        try (PDDocument document = Loader.loadPDF(sheet)) {
            document.getDocumentCatalog().getAcroForm(null).getField(from).setPartialName(to);
            return bytes(document);
        }
    }

    /** The same with other words about what it is. */
    static byte[] saying(String words, byte[] sheet) throws IOException {
        try (PDDocument document = Loader.loadPDF(sheet)) {
            document.getDocumentCatalog()
                    .getAcroForm(null)
                    .getField(FormId.NAME)
                    .getCOSObject()
                    .setString(COSName.V, words);
            return bytes(document);
        }
    }

    /**
     * A sheet as another program writes it down, with a text in a field.
     *
     * @param json the sheet as that program writes it down
     */
    static String typed(String json, String field, String text) throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        JsonNode sheet = mapper.readTree(json);
        int found = 0;
        for (JsonNode object : sheet.get("qpdf").get(1)) {
            if (object.path("value").path("/T").asText().equals("u:" + field)) {
                ((ObjectNode) object.get("value")).put("/V", "u:" + text);
                found++;
            }
        }
        if (found != 1) {
            throw new AssertionError("fields of the name " + field + ": " + found);
        }
        return mapper.writeValueAsString(sheet);
    }

    private static byte[] bytes(PDDocument document) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    /** No standard is claimed, and each field tells in words what it asks for. */
    static void claimsNothingAndNamesItsFields(Path sheet) throws IOException {
        try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
            String says =
                    new String(
                            document.getDocumentCatalog().getMetadata().toByteArray(),
                            StandardCharsets.UTF_8);
            assertThat(says).contains("to fill in").doesNotContain("pdfaid", "pdfuaid");
            assertThat(document.getDocumentCatalog().getAcroForm(null).getFields())
                    .filteredOn(f -> !f.isReadOnly())
                    .hasSizeGreaterThan(10)
                    .allSatisfy(f -> assertThat(f.getAlternateFieldName()).contains(", job J-1"));
        }
    }

    static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }
}
