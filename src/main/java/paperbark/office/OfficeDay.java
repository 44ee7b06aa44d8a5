package paperbark.office;

import java.nio.file.Path;
import java.time.ZoneId;
import paperbark.firm.FirmTablesReader;

/** The day where the firm is, which need not be the day where its computer thinks it is. */
public final class OfficeDay {
    private OfficeDay() {}

    /** The zone of the firm whose tables these are; the computer's where they name none. */
    public static ZoneId zone(Path tables, ZoneId computers) {
        return FirmTablesReader.zone(tables).orElse(computers);
    }
}
