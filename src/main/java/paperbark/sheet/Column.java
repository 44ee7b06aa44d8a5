package paperbark.sheet;

import paperbark.finding.Place;

/**
 * One column of a sheet.
 *
 * @param index 1-based; below 1 for facts that share the cell of another column
 * @param letters such as {@code F}
 * @param heading as the heading row shows it, cleaned; never empty
 */
public record Column(int index, String letters, String heading) {

    /** Its cell in a row of the file's sheet. */
    public Place place(String file, String sheet, int row) {
        return new Place.InCell(file, sheet, row, heading, letters + row);
    }
}
