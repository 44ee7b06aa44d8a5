package paperbark.output.form;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.interactive.action.PDAction;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.pdmodel.interactive.action.PDFormFieldAdditionalActions;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import paperbark.value.Days;

/**
 * How a field writes a day: in the form that its own script names, which is read and never run, or
 * as 3/11/2026.
 */
final class DateForm {
    private static final String USUAL = "d/M/uuuu";

    // The numbered forms of AFDate_Format, in their order.
    private static final List<String> NUMBERED =
            List.of(
                    "m/d",
                    "m/d/yy",
                    "mm/dd/yy",
                    "mm/yy",
                    "d-mmm",
                    "d-mmm-yy",
                    "dd-mmm-yy",
                    "yy-mm-dd",
                    "mmm-yy",
                    "mmmm-yy",
                    "mmm d, yyyy",
                    "mmmm d, yyyy",
                    "m/d/yy h:MM tt",
                    "m/d/yy HH:MM");

    private static final Pattern CALL =
            Pattern.compile(
                    "AFDate_(?:Format|Keystroke)(?:Ex)?\\s*\\(\\s*(?:\"([^\"]{1,40})\"|'([^']{1,40})'|([0-9]{1,2}))");
    private static final Pattern SHOWN = Pattern.compile("[0-9]{1,2} [A-Z][a-z]{2} [0-9]{4}");

    private DateForm() {}

    /** The form that the field's script names, e.g. {@code dd/mm/yyyy}. */
    static Optional<String> of(PDTerminalField field) {
        PDFormFieldAdditionalActions actions = field.getActions();
        return actions == null
                ? Optional.empty()
                : named(actions.getF()).or(() -> named(actions.getK()));
    }

    private static Optional<String> named(PDAction action) {
        String script =
                action instanceof PDActionJavaScript found && found.getAction() != null
                        ? found.getAction()
                        : "";
        Matcher call = CALL.matcher(script);
        if (!call.find()) {
            return Optional.empty();
        }
        if (call.group(3) == null) {
            return Optional.of(call.group(1) == null ? call.group(2) : call.group(1));
        }
        int number = Integer.parseInt(call.group(3));
        return number < NUMBERED.size() ? Optional.of(NUMBERED.get(number)) : Optional.empty();
    }

    /** The value as the field writes it; a value that is no day stays as it is. */
    static String applied(PDTerminalField field, String value) {
        return SHOWN.matcher(value).matches()
                ? Days.parse(value)
                        .toOptional()
                        .flatMap(day -> written(day, of(field)))
                        .orElse(value)
                : value;
    }

    /** A day in the usual form, where the value is one. */
    static String usual(String value) {
        return SHOWN.matcher(value).matches()
                ? Days.parse(value)
                        .toOptional()
                        .flatMap(day -> written(day, Optional.empty()))
                        .orElse(value)
                : value;
    }

    /** A day in a form such as {@code dd/mm/yyyy}; a value that is no day stays as it is. */
    static String as(String form, String value) {
        return SHOWN.matcher(value).matches()
                ? Days.parse(value)
                        .toOptional()
                        .flatMap(day -> written(day, Optional.of(form)))
                        .orElse(value)
                : value;
    }

    private static Optional<String> written(LocalDate day, Optional<String> form) {
        try {
            String pattern = form.map(DateForm::pattern).orElse(USUAL);
            return Optional.of(DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(day));
        } catch (IllegalArgumentException | DateTimeException e) {
            // A form with hours, or one that nobody knows.
            return written(day, Optional.empty());
        }
    }

    private static String pattern(String form) {
        StringBuilder pattern = new StringBuilder();
        Matcher part = Pattern.compile("d+|m+|y+|[^dmy]+").matcher(form);
        while (part.find()) {
            String piece = part.group();
            int length = piece.length();
            switch (piece.charAt(0)) {
                case 'd' -> pattern.append(length > 2 ? (length == 3 ? "EEE" : "EEEE") : piece);
                case 'm' -> pattern.append("M".repeat(Math.min(length, 4)));
                case 'y' -> pattern.append(length > 2 ? "uuuu" : "uu");
                default -> pattern.append('\'').append(piece.replace("'", "''")).append('\'');
            }
        }
        if (Pattern.compile("[HhMst]").matcher(form).find()) {
            throw new IllegalArgumentException("a day has no hours");
        }
        return pattern.toString();
    }
}
