package paperbark.output.form;

import java.util.List;
import java.util.Map;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.RowReader;
import paperbark.sheet.Sheet;

/** A row of a mapping table; one with a cell that cannot be used is left out. */
final class MappingRow extends RowReader<String> {
    MappingRow(Sheet sheet, Map<String, Column> columns, Row row, List<Finding> findings) {
        super(sheet, columns, row, findings);
    }

    @Override
    protected Finding finding(String key, Place place, CellTrouble trouble, boolean refused) {
        FindingCode code = refused ? FindingCode.TABLE_ROW_WRONG : trouble.code();
        return Finding.of(code, place, trouble.fact(), trouble.remedy())
                .seeing(trouble.seen().orElse(""));
    }
}
