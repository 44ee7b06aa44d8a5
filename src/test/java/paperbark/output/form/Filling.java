package paperbark.output.form;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import paperbark.finding.Finding;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.value.SchemeName;

/** A form of a test's own, filled for one job whose STC buyer wants it. */
final class Filling {
    private Filling() {}

    /** What came of it. */
    record Result(Forms.Filled filled, List<Finding> findings) {
        byte[] pdf() {
            return filled.papers().get(0).pdf();
        }

        /** The text of the pages in the order of drawing. */
        String text() {
            return Filling.text(pdf());
        }
    }

    static Result of(Path folder, byte[] form, String... table) {
        return of(folder, CaseFiles.installedSolar(), form, table);
    }

    static Result of(Path folder, CaseFile caseFile, byte[] form, String... table) {
        try {
            Path forms = Files.createDirectories(folder.resolve("forms"));
            Files.write(forms.resolve("theirs.pdf"), form);
            Files.write(forms.resolve("theirs.csv"), List.of(table), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Forms.Filled filled = new Forms(Optional.of(folder)).fill(wanting(caseFile));
        List<Finding> before = caseFile.findings();
        return new Result(
                filled,
                filled.caseFile().findings().stream()
                        .filter(f -> before.stream().noneMatch(b -> b.fact().equals(f.fact())))
                        .toList());
    }

    /** The same case with the form "theirs" for its STC assignment. */
    static CaseFile wanting(CaseFile c) {
        List<Paper> papers =
                c.papers().stream()
                        .map(
                                p ->
                                        p.kind() == PaperKind.of(SchemeName.STC)
                                                ? new Paper(p.kind(), "theirs", p.blockedBy())
                                                : p)
                        .toList();
        return with(c, papers);
    }

    /** The same case with other papers. */
    static CaseFile with(CaseFile c, List<Paper> papers) {
        return c.withPapers(papers);
    }

    static String text(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
