package paperbark.settle;

import java.util.List;
import java.util.Map;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.RowReader;
import paperbark.sheet.Sheet;

/**
 * The cells of one row of an advice; a cell that cannot be used spoils the row, and nothing else.
 */
final class AdviceRow extends RowReader<AdviceField> {
    AdviceRow(Sheet sheet, Map<AdviceField, Column> columns, Row row, List<Finding> findings) {
        super(sheet, columns, row, findings);
    }

    boolean isSound() {
        return unread().isEmpty();
    }

    @Override
    protected Finding finding(
            AdviceField field, Place place, CellTrouble trouble, boolean refused) {
        Finding finding =
                Finding.of(trouble.code(), place, trouble.fact(), trouble.remedy())
                        .seeing(trouble.seen().orElse(""));
        return finding.stops() ? finding.as(Severity.CHECK) : finding;
    }
}
