package paperbark.sheet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbookType;
import paperbark.finding.Place;

/** A plain .xlsx in the place of a file that cannot be handed on under that ending. */
final class CopiedWorkbook {
    private CopiedWorkbook() {}

    static Optional<byte[]> of(Path file, FileKind kind, Place place) throws IOException, Refused {
        if (kind == FileKind.OPEN_SHEET) {
            try (XSSFWorkbook book = OpenSheet.workbook(file, false, place)) {
                return Optional.of(bytes(book));
            }
        }
        return kind == FileKind.WORKBOOK ? withoutMacros(file) : Optional.empty();
    }

    private static Optional<byte[]> withoutMacros(Path file) throws IOException {
        // Opened from bytes: with a file at hand the library would write to it on closing.
        try (XSSFWorkbook book =
                new XSSFWorkbook(new ByteArrayInputStream(Files.readAllBytes(file)))) {
            if (!book.isMacroEnabled()) {
                return Optional.empty();
            }
            book.setWorkbookType(XSSFWorkbookType.XLSX);
            PackagePart part = book.getPackagePart();
            for (PackageRelationship relationship :
                    part.getRelationshipsByType(XSSFRelation.VBA_MACROS.getRelation())) {
                book.getPackage().removePart(part.getRelatedPart(relationship));
                part.removeRelationship(relationship.getId());
            }
            return Optional.of(bytes(book));
        } catch (InvalidFormatException e) {
            throw new IOException(e);
        }
    }

    private static byte[] bytes(XSSFWorkbook book) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        book.write(out);
        return out.toByteArray();
    }
}
