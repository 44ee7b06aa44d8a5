package paperbark.firm;

import java.nio.file.Path;
import java.util.stream.Collectors;
import paperbark.finding.FindingCode;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.TableFiles;

/** Where the firm's tables are kept. */
interface TableSource {

    /** The sheet of a table; refused with {@link FindingCode#TABLE_MISSING} where there is none. */
    Reading<Sheet> sheet(TableShape shape);

    /** A folder or a workbook of tables. */
    static TableSource at(Path folderOrWorkbook) {
        TableFiles files =
                TableFiles.at(
                        folderOrWorkbook,
                        TableShape.all().stream()
                                .collect(Collectors.toMap(TableShape::name, s -> s::knows)));
        return shape -> files.sheet(shape.name());
    }
}
