package paperbark.output.paper;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the column of a template's line from which a column of its result came. */
final class TemplateColumn {
    /** What a template's line has that its result has not. */
    static final Pattern CODE = Pattern.compile("\\$\\{[^}]*}|</?[#@][^>]*>|<#--.*?-->");

    private TemplateColumn() {}

    /**
     * The column of the template, from 1.
     *
     * @param template the template's line
     * @param result the line that came of it
     * @param column of the result, from 1
     */
    static int of(String template, String result, int column) {
        Matcher code = CODE.matcher(template);
        int own = template.length() - template.stripLeading().length();
        int searched = 0;
        while (true) {
            boolean more = code.find(own);
            String words = template.substring(own, more ? code.start() : template.length());
            int at = result.indexOf(words.strip(), searched);
            int indent = words.length() - words.stripLeading().length();
            if (at < 0 || column - 1 < at) {
                // Printed by the piece of code before.
                return own + 1;
            }
            int end = at + words.strip().length();
            if (column - 1 <= end || !more) {
                return Math.min(own + indent + column - 1 - at, template.length()) + 1;
            }
            searched = end;
            own = code.end();
        }
    }
}
