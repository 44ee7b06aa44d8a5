package paperbark.firm;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/** Where the firm's tables are kept. */
interface TableSource {

    /** The sheet of a table; refused with {@link FindingCode#TABLE_MISSING} where there is none. */
    Reading<Sheet> sheet(TableShape shape);

    /** A folder with a CSV file per table, or a workbook with a sheet per table. */
    static TableSource at(Path folderOrWorkbook) {
        return Files.isDirectory(folderOrWorkbook)
                ? shape -> inFolder(folderOrWorkbook, shape)
                : shape -> inWorkbook(folderOrWorkbook, shape);
    }

    private static Reading<Sheet> inFolder(Path folder, TableShape shape) {
        String name = shape.name() + ".csv";
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            return missing(
                    new Place.InFile(name),
                    "The tables folder has no file " + name + ".",
                    "Put " + name + " into the tables folder, with its heading row.");
        }
        return SheetReader.read(file, shape::knows, Optional.empty());
    }

    private static Reading<Sheet> inWorkbook(Path workbook, TableShape shape) {
        String name = workbook.getFileName().toString();
        if (!Files.isRegularFile(workbook)) {
            return missing(
                    new Place.InFile(name),
                    "There is neither a folder nor a workbook of this name.",
                    "Name the folder of the firm's tables, or the workbook that holds them.");
        }
        Reading<Sheet> reading =
                SheetReader.read(workbook, shape::knows, Optional.of(shape.name()));
        if (reading.findings().stream().anyMatch(f -> f.code() == FindingCode.SHEET_NOT_FOUND)) {
            return missing(
                    new Place.InFile(name),
                    "The workbook has no sheet " + shape.name() + ".",
                    "Add a sheet named " + shape.name() + ", with its heading row.");
        }
        return reading;
    }

    private static Reading<Sheet> missing(Place place, String fact, String remedy) {
        return Reading.refused(List.of(Finding.of(FindingCode.TABLE_MISSING, place, fact, remedy)));
    }
}
