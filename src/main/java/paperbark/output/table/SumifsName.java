package paperbark.output.table;

import java.util.regex.Pattern;

/** A name that a user typed, as SUMIFS must be asked for it. */
final class SumifsName {
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}][^*?~]*");

    private SumifsName() {}

    /**
     * The criterion for cells that show the same as another cell. SUMIFS reads a name such as "*"
     * or ">A" as a pattern; such a name is spelt out for it.
     *
     * @param name what the cell shows
     * @param cell the cell as formulas name it, e.g. {@code [buyer]}
     */
    static String like(String name, String cell) {
        return PLAIN.matcher(name).matches()
                ? cell
                : "\"=\"&SUBSTITUTE(SUBSTITUTE(SUBSTITUTE("
                        + cell
                        + ",\"~\",\"~~\"),\"*\",\"~*\"),\"?\",\"~?\")";
    }
}
