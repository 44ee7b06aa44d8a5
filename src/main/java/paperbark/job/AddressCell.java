package paperbark.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.value.Parsed;
import paperbark.value.State;

/**
 * An address in one cell: {@code Unit 3, 12 Teaspoon Lane, Ballan VIC 3342}. State and postcode are
 * taken off the end; what follows the last comma is then the suburb, and all before it the street,
 * be it a unit, a lot, a property's name or a post office box.
 */
final class AddressCell {
    private static final Pattern COUNTRY = Pattern.compile("(?i)[\\s,]+australia$");
    private static final Pattern POSTCODE = Pattern.compile("(?:^|[\\s,])([0-9]{4})$");
    private static final Pattern NUMBER_OF_PLOT =
            Pattern.compile("(?i).*\\b(lot|rmb|rsd|box|bag|no\\.?|unit|flat)\\s*[0-9]{4}$");
    private static final Pattern STATE = state();
    private static final Pattern BOX =
            Pattern.compile(
                    "(?i)((?:g\\.?p\\.?o\\.?|p\\.?\\s?o\\.?|post office|locked|private) (?:box|bag) \\w+)[\\s,]+(.+)");

    /** Our own list of what streets are called, no source. */
    private static final Set<String> STREETS =
            Set.of(
                    ("st street rd road av ave avenue cr cres crescent ct court cl close dr drive"
                                    + " drv hwy highway la lane ln pde parade pl place tce terrace"
                                    + " way bvd blvd boulevard cct circuit gr grove esp esplanade"
                                    + " mews rise trk track sq square walk loop row run gdns"
                                    + " gardens quay promenade")
                            .split(" "));

    private final List<Field> fields;
    private final Map<Field, String> found = new LinkedHashMap<>();
    private String rest;

    private AddressCell(String text, List<Field> fields) {
        this.rest = text;
        this.fields = fields;
    }

    /**
     * Takes the address apart.
     *
     * @param fields those of street, suburb, state and postcode, in this order
     */
    static Parsed<CellParts> parse(String text, List<Field> fields) {
        return new AddressCell(text, fields).parsed();
    }

    private static Pattern state() {
        List<String> names = new ArrayList<>();
        for (State state : State.values()) {
            names.add(String.join("\\.?", state.name().split("")) + "\\.?");
            names.add(state.fullName());
        }
        return Pattern.compile("(?i)(?:^|[\\s,])(" + String.join("|", names) + ")$");
    }

    private Parsed<CellParts> parsed() {
        rest = COUNTRY.matcher(trimmed(rest)).replaceFirst("");
        String state = "";
        String postcode = "";
        for (int i = 0; i < 2; i++) {
            Matcher number = POSTCODE.matcher(rest);
            if (postcode.isEmpty() && number.find() && !NUMBER_OF_PLOT.matcher(rest).matches()) {
                postcode = number.group(1);
                rest = trimmed(rest.substring(0, number.start()));
            }
            Matcher name = STATE.matcher(rest);
            if (state.isEmpty() && name.find()) {
                state = name.group(1);
                rest = trimmed(rest.substring(0, name.start()));
            }
        }
        Optional<CellParts> parts = streetAndSuburb(state, postcode);
        return parts.map(Parsed::ok)
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "Nobody can tell where the street ends and the suburb begins.",
                                        "Write the address as street, comma, suburb, state and postcode."));
    }

    private Optional<CellParts> streetAndSuburb(String state, String postcode) {
        int comma = rest.lastIndexOf(',');
        String last = rest.substring(comma + 1).strip();
        String before = comma < 0 ? "" : trimmed(rest.substring(0, comma));
        Matcher box = BOX.matcher(rest);
        if (box.matches() && !box.group(2).matches(".*[0-9,].*")) {
            return Optional.of(parts(box.group(1), box.group(2), state, postcode));
        }
        if (!before.isEmpty() && !last.isEmpty() && !last.matches(".*[0-9].*")) {
            CellParts parts = parts(before, last, state, postcode);
            return Optional.of(
                    isStreet(last) && last.contains(" ")
                            ? parts.doubted("the suburb looks like a street")
                            : parts);
        }
        return endOfStreet(last)
                .map(
                        end ->
                                parts(
                                                before
                                                        + (before.isEmpty() ? "" : ", ")
                                                        + last.substring(0, end),
                                                last.substring(end),
                                                state,
                                                postcode)
                                        .doubted("no comma parts street and suburb"));
    }

    /** Behind the first word for a street that has a number and a name before it. */
    private static Optional<Integer> endOfStreet(String text) {
        String[] words = text.split(" ");
        int end = words.length < 4 ? 0 : words[0].length() + 1 + words[1].length();
        for (int i = 2; i < words.length - 1; i++) {
            end += 1 + words[i].length();
            boolean digitsBehind = text.substring(end).matches(".*[0-9].*");
            if (isStreet(words[i]) && !digitsBehind && text.matches("(?i)(lot |.*?[0-9]).*")) {
                return Optional.of(end);
            }
        }
        return Optional.empty();
    }

    private static boolean isStreet(String text) {
        String last = text.substring(text.lastIndexOf(' ') + 1);
        return STREETS.contains(last.toLowerCase(Locale.ROOT).replace(".", ""));
    }

    private CellParts parts(String street, String suburb, String state, String postcode) {
        found.put(fields.get(0), street);
        found.put(fields.get(1), suburb);
        found.put(fields.get(2), state);
        found.put(fields.get(3), postcode);
        return CellParts.sure(CellParts.texts(found));
    }

    private static String trimmed(String text) {
        return text.replaceAll("[\\s,;]+$", "").replaceAll("^[\\s,;]+", "");
    }
}
