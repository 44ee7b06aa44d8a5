package paperbark.sheet;

/**
 * One column of a sheet.
 *
 * @param index 1-based
 * @param letters such as {@code F}
 * @param heading as the heading row shows it, cleaned; never empty
 */
public record Column(int index, String letters, String heading) {}
