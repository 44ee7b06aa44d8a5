package paperbark.settle;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.Words;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/** A payment advice is read line by line or refused, whatever its bytes. */
class AdviceFuzz {
    private final ColumnNames<AdviceField> names =
            HeadingTable.of(
                    List.of(AdviceField.values()),
                    "advice-columns",
                    Path.of("input-samples/tables"),
                    new ArrayList<>());

    @FuzzTest(maxDuration = "10m")
    void anAdviceIsReadOrRefused(byte[] content) {
        Reading<Sheet> read = SheetReader.readCsv("advice.csv", content, names::knows);
        Optional<Map<AdviceField, Column>> columns =
                read.result().flatMap(sheet -> ColumnMap.of(sheet, names).result());
        if (columns.isPresent()) {
            new AdviceReader(Words.SHIPPED, Optional.empty(), Optional.empty())
                    .read(read.result().get(), columns.get());
        }
    }
}
