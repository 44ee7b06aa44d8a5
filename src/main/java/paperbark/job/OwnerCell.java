package paperbark.job;

import static paperbark.job.Field.OWNER_CONTACT;
import static paperbark.job.Field.OWNER_NAME;
import static paperbark.job.Field.SECOND_OWNER;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.value.Parsed;

/**
 * Owners in one cell: {@code Heron, Alma}, {@code Alma & Otto Heron}, {@code Heron, Alma & Otto},
 * or an organisation with the person to ask for.
 */
final class OwnerCell {
    private static final Pattern CONTACT =
            Pattern.compile(
                    "(?i)(.+?)[\\s,;-]+(?:c/-|c/o|care of|attn|att|attention|contact)[\\s:.]+(.+)");
    private static final Pattern BRACKETS = Pattern.compile("(.+?)\\s*\\(([^()]+)\\)");
    private static final Pattern ORGANISATION =
            Pattern.compile(
                    "(?i).*\\b(pty|ltd|limited|inc|incorporated|co-?op|co-?operative|trust|trustees?"
                            + "|council|corporation|club|school|church|association|society"
                            + "|partnership|holdings|company)\\b.*");
    private static final Pattern AND = Pattern.compile("(?i)\\s*(?:&|\\+|\\band\\b)\\s*");
    private static final Pattern TITLE = Pattern.compile("(?i)(mr|mrs|ms|miss|mx|dr|prof)\\.?");
    private static final Pattern PARTICLE =
            Pattern.compile("(?i)(van|von|de|der|den|del|di|da|la|le|st|mc|mac|o')");

    private OwnerCell() {}

    static Parsed<CellParts> parse(String text) {
        Matcher contact = CONTACT.matcher(text);
        if (contact.matches()) {
            return parts(contact.group(1), "", contact.group(2));
        }
        return ORGANISATION.matcher(text).matches() ? organisation(text) : people(text);
    }

    private static Parsed<CellParts> organisation(String text) {
        Matcher brackets = BRACKETS.matcher(text);
        if (brackets.matches() && !isOrganisation(brackets.group(2))) {
            return parts(brackets.group(1), "", brackets.group(2));
        }
        String[] sides = text.split("\\s*[,;]\\s*|\\s+[-/\u2013]\\s+");
        List<String> others = Arrays.stream(sides).filter(side -> !isOrganisation(side)).toList();
        if (sides.length != 2 || others.size() != 1) {
            Parsed<CellParts> whole = parts(text, "", "");
            return sides.length > 2 && !others.isEmpty()
                    ? doubted(whole, "it may hold more than the organisation's name")
                    : whole;
        }
        return parts(sides[others.get(0).equals(sides[0]) ? 1 : 0], "", others.get(0));
    }

    private static boolean isOrganisation(String text) {
        return ORGANISATION.matcher(text).matches();
    }

    private static Parsed<CellParts> people(String text) {
        String[] persons = AND.split(text, -1);
        int commas = text.length() - text.replace(",", "").length();
        if (persons.length > 2 || commas > persons.length) {
            return Parsed.bad(
                    "Nobody can tell which names belong together.",
                    "Write one owner as surname, comma and first name, and two with \"&\" between them.");
        }
        if (persons.length == 1) {
            return one(text, commas);
        }
        return commas > 0 ? surnamesFirst(persons, commas) : firstNames(persons);
    }

    private static Parsed<CellParts> one(String text, int commas) {
        if (commas == 0) {
            return parts(text, "", "");
        }
        Parsed<CellParts> parts = parts(turned(text), "", "");
        return isSurname(text.substring(0, text.indexOf(',')))
                ? parts
                : doubted(parts, "what stands before the comma may be no surname");
    }

    /** {@code Heron, Alma & Otto}, or each with a surname. */
    private static Parsed<CellParts> surnamesFirst(String[] persons, int commas) {
        if (commas == 2 && persons[0].contains(",") && persons[1].contains(",")) {
            return parts(turned(persons[0]), turned(persons[1]), "");
        }
        if (commas != 1 || !persons[0].contains(",")) {
            return doubted(
                    parts(persons[0], persons[1], ""),
                    "the comma may part a surname from a first name");
        }
        String surname = persons[0].substring(0, persons[0].indexOf(',')).strip();
        boolean shares = persons[1].strip().split(" ").length == 1;
        Parsed<CellParts> both =
                parts(
                        turned(persons[0]),
                        shares ? persons[1].strip() + " " + surname : persons[1],
                        "");
        return isSurname(surname)
                ? both
                : doubted(both, "what stands before the comma may be no surname");
    }

    /** {@code Alma & Otto Heron}, or each with a surname. */
    private static Parsed<CellParts> firstNames(String[] persons) {
        String first = persons[0].strip();
        String second = persons[1].strip();
        String[] words = second.split(" ");
        boolean named = !first.isEmpty() && !TITLE.matcher(first).matches() && words.length > 1;
        boolean titled = TITLE.matcher(words[0]).matches();
        if (!named || (titled && words.length == 2)) {
            return doubted(
                    parts(first + " & " + second, "", ""),
                    "it names two people without the names of both");
        }
        String[] own = first.split(" ");
        boolean shares = own.length == 1 || (own.length == 2 && TITLE.matcher(own[0]).matches());
        return parts(shares ? first + " " + words[words.length - 1] : first, second, "");
    }

    private static String turned(String name) {
        int comma = name.indexOf(',');
        return name.substring(comma + 1).strip() + " " + name.substring(0, comma).strip();
    }

    private static boolean isSurname(String text) {
        String[] words = text.strip().split(" ");
        return words.length == 1 || PARTICLE.matcher(words[0]).matches();
    }

    private static Parsed<CellParts> parts(String name, String second, String contact) {
        Map<Field, String> found = new LinkedHashMap<>();
        found.put(OWNER_NAME, name);
        found.put(SECOND_OWNER, second);
        found.put(OWNER_CONTACT, contact);
        return Parsed.ok(CellParts.sure(CellParts.texts(found)));
    }

    private static Parsed<CellParts> doubted(Parsed<CellParts> parts, String why) {
        return parts.map(p -> p.doubted(why));
    }
}
