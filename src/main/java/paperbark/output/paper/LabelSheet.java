package paperbark.output.paper;

/**
 * How labels lie on a sheet of A4, or that each has a page of its own. All lengths are tenths of a
 * millimetre. The usual measures are common practice; no source was read for them.
 *
 * @param across how many lie side by side; 0 where each label is a page
 * @param down how many lie below each other; 0 likewise
 * @param size of a label
 * @param first upper left corner of the first label, from that of the sheet
 * @param step from one label to the next, so that gaps count in
 * @param start the first place that is free, from 1
 */
public record LabelSheet(int across, int down, Extent size, Extent first, Extent step, int start) {
    /** Width and height of A4. */
    public static final Extent A4 = new Extent(2100, 2970);

    /** 24 labels of 70 by 37 mm without gaps. */
    public static final LabelSheet OF_24 =
            new LabelSheet(3, 8, new Extent(700, 370), new Extent(0, 5), new Extent(700, 370), 1);

    /** Labels of 100 by 50 mm, one a page. */
    public static final LabelSheet SINGLE =
            new LabelSheet(0, 0, new Extent(1000, 500), new Extent(0, 0), new Extent(0, 0), 1);

    /**
     * A width and a height, or a way to the right and down.
     *
     * @param wide tenths of a millimetre
     * @param high tenths of a millimetre
     */
    public record Extent(int wide, int high) {}

    private static final Extent NOWHERE = new Extent(0, 0);

    /** Whether each label is a page. */
    public boolean isSingle() {
        return across == 0;
    }

    /** How many labels a page holds. */
    public int places() {
        return isSingle() ? 1 : across * down;
    }

    /** Whether all labels lie on the sheet, and the first free place does. */
    public boolean fits() {
        boolean sized = size.wide() > 0 && size.high() > 0 && start >= 1 && start <= places();
        return sized
                && (isSingle() && first.equals(NOWHERE)
                        || across > 0
                                && down > 0
                                && step.wide() >= (across > 1 ? size.wide() : 0)
                                && step.high() >= (down > 1 ? size.high() : 0)
                                && end(first.wide(), step.wide(), across, size.wide()) <= A4.wide()
                                && end(first.high(), step.high(), down, size.high()) <= A4.high());
    }

    private static long end(int first, int step, int count, int size) {
        return first + (long) step * (count - 1) + size;
    }

    /** The upper left corner of a place, counted from 0. */
    Extent corner(int place) {
        return isSingle()
                ? first
                : new Extent(
                        first.wide() + place % across * step.wide(),
                        first.high() + place / across * step.high());
    }

    /** The size of a page. */
    Extent page() {
        return isSingle() ? size : A4;
    }
}
