package paperbark.sheet;

/**
 * Sizes beyond which a file is refused. A week's register has some hundred rows and thirty columns;
 * what lies far beyond is a mistake or an attack, and would take memory that the papers need.
 */
final class Limits {
    /** A register without pictures stays under 1 MB; 25 MB leaves room for a logo or two. */
    static final long FILE_BYTES = 25L * 1024 * 1024;

    /** All parts of a workbook unpacked; what a 25 MB workbook of real rows comes to at most. */
    static final long INFLATED_BYTES = 300L * 1024 * 1024;

    /** Parts in a workbook; the library's own limit, checked early to name it. */
    static final int PARTS = 1000;

    /** Jobs: a year of the busiest firm, several times over. */
    static final int ROWS = 20_000;

    /** Rows with values on a sheet: the jobs, the headings and a few titles above. */
    static final int FILLED_ROWS = ROWS + 30;

    /** Rows that are merely formatted cost memory too. */
    static final int FORMATTED_ROWS = 200_000;

    /** Columns with values. */
    static final int COLUMNS = 200;

    /** What a spreadsheet program can hold at most; a CSV record beyond it is no record. */
    static final int WIDEST_RECORD = 16_384;

    /** Cells of an .xls or .ods, which are held as a tree: half of the memory given. */
    static final int CELLS = 300_000;

    /** Cells with values that are read as a stream: 65 in each of 20,000 rows, and some more. */
    static final int VALUES = 1_400_000;

    /** Cells with or without values that are read as a stream: as wide as allowed throughout. */
    static final int STREAMED_CELLS = ROWS * 200;

    /** Entries of a workbook's table of texts, in a cell or in none. */
    static final int TEXTS = 2_000_000;

    /** Parts that unpack to more are read as a stream; a tree of them takes twenty times that. */
    static final long STREAMED_BYTES = 8L * 1024 * 1024;

    /** Entries of merged blocks, counted per row. */
    static final int MERGED_ROWS = 200_000;

    /** What a spreadsheet program can keep in one cell. */
    static final int CELL_CHARACTERS = 32_767;

    /** Text of all cells of one part together. */
    static final long TEXT_CHARACTERS = 20_000_000;

    /** Rows at the top among which the headings are looked for; titles above take a few. */
    static final int HEADING_ROWS = 30;

    /** The last row that an .xls sheet can have. */
    static final int LAST_ROW_XLS = 65_536;

    /** The last row that an .xlsx sheet can have. */
    static final int LAST_ROW_XLSX = 1_048_576;

    private Limits() {}
}
