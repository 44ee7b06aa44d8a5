package paperbark.finding;

/** Makes a value safe to show: control and direction characters visible, long text shortened. */
final class Seen {
    private static final int LONGEST = 60;

    private Seen() {}

    static String shown(String value) {
        String visible = visible(value);
        if (visible.length() <= LONGEST || visible.codePointCount(0, visible.length()) <= LONGEST) {
            return visible;
        }
        return visible.substring(0, visible.offsetByCodePoints(0, LONGEST - 1)) + "…";
    }

    static String visible(String value) {
        if (isPlain(value)) {
            return value;
        }
        StringBuilder out = new StringBuilder(value.length());
        value.codePoints()
                .forEach(
                        c -> {
                            int type = Character.getType(c);
                            if (type == Character.CONTROL
                                    || type == Character.FORMAT
                                    || type == Character.SURROGATE) {
                                out.append(String.format("\\u%04x", c));
                            } else {
                                out.appendCodePoint(c);
                            }
                        });
        return out.toString();
    }

    /** Most text is nothing else, and every finding is looked at several times. */
    private static boolean isPlain(String value) {
        for (int i = 0; i < value.length(); i++) {
            if (value.charAt(i) < ' ' || value.charAt(i) > '~') {
                return false;
            }
        }
        return true;
    }
}
