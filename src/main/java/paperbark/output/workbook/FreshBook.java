package paperbark.output.workbook;

import java.time.Instant;
import java.util.Date;
import java.util.Optional;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A new workbook that does not tell when it was made, as the library's own would. */
final class FreshBook {
    private FreshBook() {}

    static XSSFWorkbook make() {
        XSSFWorkbook workbook = new XSSFWorkbook(QuickStrings.factory());
        workbook.getProperties()
                .getCoreProperties()
                .setCreated(Optional.of(Date.from(Instant.EPOCH)));
        return workbook;
    }
}
