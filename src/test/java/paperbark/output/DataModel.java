package paperbark.output;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.entitlement.Entitlement;
import paperbark.finding.Concern;
import paperbark.firm.Buyer;
import paperbark.job.Field;
import paperbark.offer.Expected;
import paperbark.output.paper.Diary;
import paperbark.value.Abn;
import paperbark.value.AccountNumber;
import paperbark.value.Acn;
import paperbark.value.Address;
import paperbark.value.Bsb;
import paperbark.value.DateRange;
import paperbark.value.Email;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.Phone;
import paperbark.value.Postcode;
import paperbark.value.Serial;

/**
 * The facts that a template can print, as a page: their names and kinds by reflection, their
 * meanings from the comments in the sources.
 */
final class DataModel {
    /** Values that a template sees as text, and how they look. */
    private static final Map<Class<?>, String> TEXTS =
            Map.ofEntries(
                    Map.entry(Money.class, "amount, e.g. `$1,234.50`"),
                    Map.entry(ExactMoney.class, "unrounded amount, e.g. `$37.5`"),
                    Map.entry(Abn.class, "text, e.g. `99 000 000 000`"),
                    Map.entry(Acn.class, "text"),
                    Map.entry(Serial.class, "text"),
                    Map.entry(Postcode.class, "text, four digits"),
                    Map.entry(DateRange.class, "text, first and last day"),
                    Map.entry(Phone.class, "text, in full"),
                    Map.entry(Email.class, "text, in full"),
                    Map.entry(Bsb.class, "text, in full"),
                    Map.entry(AccountNumber.class, "text, in full"),
                    Map.entry(LocalDate.class, "day, e.g. `18 Nov 2026`"),
                    Map.entry(String.class, "text"));

    /** What is one of a few, some of them made from the schemes. */
    private static final Map<Class<?>, List<?>> CLOSED =
            Map.of(
                    Concern.class, Concern.values(),
                    Field.class, Field.values(),
                    PaperKind.class, PaperKind.values());

    private static final Set<String> NOT_FACTS =
            Set.of("hashCode", "toString", "getClass", "notify", "notifyAll", "wait");

    private final SourceDocs docs = SourceDocs.read(Path.of("src/main/java"));
    private final Deque<Class<?>> waiting = new ArrayDeque<>();
    private final Map<Class<?>, Map<String, Type>> seen = new LinkedHashMap<>();
    private final List<String> unexplained = new ArrayList<>();

    /** What a template sees at the top, beside the entries of the case file. */
    private static final Map<String, Class<?>> TOP =
            new TreeMap<>(Map.of("diary", Diary.class, "paper", Paper.class));

    private static final Map<String, Class<?>> FORMS_ALONE =
            new TreeMap<>(
                    Map.of(
                            "claim",
                            Entitlement.class,
                            "buyer",
                            Buyer.class,
                            "taken",
                            Expected.class));

    private static final Class<?> LETTERS = LetterView.class;

    /** The names that a record has for templates, by what they are. */
    static Map<String, Type> facts(Class<?> record) {
        Map<String, Type> facts = new LinkedHashMap<>();
        for (RecordComponent component : record.getRecordComponents()) {
            facts.put(component.getName(), component.getGenericType());
        }
        Arrays.stream(record.getMethods())
                .filter(m -> m.getParameterCount() == 0 && !Modifier.isStatic(m.getModifiers()))
                .filter(m -> !NOT_FACTS.contains(m.getName()) && !facts.containsKey(m.getName()))
                .filter(
                        m ->
                                !Record.class.isAssignableFrom(m.getReturnType())
                                        || m.getReturnType() == Money.class)
                .sorted(Comparator.comparing(Method::getName))
                .forEach(m -> facts.put(m.getName(), m.getGenericReturnType()));
        if (record == Address.class) {
            facts.put("line", String.class);
        }
        return facts;
    }

    /** Names without a word of explanation in the sources. */
    List<String> unexplained() {
        return unexplained;
    }

    /** Every kind of record that a template can come across, with its names. */
    Map<Class<?>, Map<String, Type>> records() {
        if (seen.isEmpty()) {
            visit(CaseFile.class);
            TOP.values().forEach(this::visit);
            FORMS_ALONE.values().forEach(this::visit);
            visit(LETTERS);
            while (!waiting.isEmpty()) {
                Class<?> next = waiting.remove();
                seen.get(next).values().forEach(type -> kind(next, type));
            }
        }
        return seen;
    }

    private void visit(Class<?> record) {
        if (!seen.containsKey(record)) {
            seen.put(record, facts(record));
            waiting.add(record);
        }
    }

    /** The list of all records, each a table. */
    String markdown() {
        StringBuilder page = new StringBuilder();
        page.append("## What a template sees at the top\n\n");
        page.append("| name | what it is | kind |\n|---|---|---|\n");
        records()
                .get(CaseFile.class)
                .forEach((name, type) -> row(CaseFile.class, name, type, page));
        TOP.forEach((name, type) -> top(name, type, page));
        page.append(
                "\nMapping tables of buyers' forms see these as well, for the scheme of the paper:\n\n");
        page.append("| name | what it is | kind |\n|---|---|---|\n");
        FORMS_ALONE.forEach((name, type) -> top(name, type, page));
        page.append(
                "\nLetters (`mail/owner.ftlh`, `mail/maker.ftlh`, `mail/buyer.ftlh`) see this at the"
                        + " top, and nothing of the above:\n\n");
        page.append("| name | what it is | kind |\n|---|---|---|\n");
        records().get(LETTERS).forEach((name, type) -> row(LETTERS, name, type, page));
        page.append("\n## The records\n");
        records().keySet().stream()
                .filter(type -> type != CaseFile.class && type != LETTERS)
                .sorted(Comparator.comparing(DataModel::title))
                .forEach(type -> section(type, page));
        return page.toString();
    }

    private void section(Class<?> record, StringBuilder page) {
        page.append("\n### ").append(title(record)).append("\n\n");
        page.append(explained(record.getSimpleName(), docs.of(record))).append(".\n\n");
        page.append("| name | what it is | kind |\n|---|---|---|\n");
        records().get(record).forEach((name, type) -> row(record, name, type, page));
    }

    private void row(Class<?> record, String name, Type type, StringBuilder page) {
        Optional<String> kind = kind(record, type);
        if (kind.isEmpty()) {
            return;
        }
        String meaning =
                name.equals("line") && record == Address.class
                        ? "the whole address on one line"
                        : explained(title(record) + "." + name, docs.of(record, name));
        page.append(
                "| `%s` | %s | %s |\n".formatted(name, meaning.replace("|", "\\|"), kind.get()));
    }

    private void top(String name, Class<?> type, StringBuilder page) {
        String meaning = explained(title(type), docs.of(type));
        page.append("| `%s` | %s | %s |\n".formatted(name, lower(meaning), link(type)));
    }

    /** Without a capital at the beginning, unless the whole word has them. */
    private static String lower(String text) {
        return text.matches("(?s)[A-Z][a-z ].*")
                ? Character.toLowerCase(text.charAt(0)) + text.substring(1)
                : text;
    }

    private String explained(String name, Optional<String> words) {
        if (words.isEmpty()) {
            unexplained.add(name);
        }
        return words.orElse("");
    }

    /** A kind in words; empty where a template sees nothing. */
    private Optional<String> kind(Class<?> in, Type type) {
        if (type instanceof ParameterizedType of) {
            Class<?> raw = (Class<?>) of.getRawType();
            List<Optional<String>> parts =
                    Arrays.stream(of.getActualTypeArguments()).map(t -> kind(in, t)).toList();
            if (parts.stream().anyMatch(Optional::isEmpty)) {
                return Optional.empty();
            }
            String last = parts.get(parts.size() - 1).get();
            if (raw == Optional.class) {
                return Optional.of(last + "; may be missing");
            }
            return Optional.of(
                    Collection.class.isAssignableFrom(raw)
                            ? "list of " + last
                            : "by " + parts.get(0).get() + ": " + last);
        }
        return plainKind((Class<?>) type);
    }

    private Optional<String> plainKind(Class<?> type) {
        if (TEXTS.containsKey(type)) {
            return Optional.of(TEXTS.get(type));
        }
        if (type == boolean.class || type == Boolean.class) {
            return Optional.of("yes or no");
        }
        if (type.isPrimitive() || Number.class.isAssignableFrom(type)) {
            return Optional.of("number");
        }
        if (type == Pattern.class) {
            return Optional.empty();
        }
        if (type.isEnum() || CLOSED.containsKey(type)) {
            return Optional.of("one of " + constants(type));
        }
        if (type.isSealed()) {
            return Optional.of(
                    Arrays.stream(type.getPermittedSubclasses())
                            .sorted(Comparator.comparing(DataModel::title))
                            .map(this::visited)
                            .collect(Collectors.joining(" or ")));
        }
        return Optional.of(type.isRecord() ? visited(type) : "text");
    }

    private String visited(Class<?> record) {
        visit(record);
        return link(record);
    }

    private static String constants(Class<?> type) {
        List<?> all = CLOSED.getOrDefault(type, asList(type));
        // The longest list is that of the codes of findings, which the README has.
        Stream<?> shown = all.stream().limit(12);
        return shown.map(c -> "`" + (c instanceof Enum<?> e ? FactsOfKind.word(e) : c) + "`")
                        .collect(Collectors.joining(", "))
                + (all.size() > 12 ? " and more" : "");
    }

    private static List<?> asList(Class<?> type) {
        return type.isEnum() ? List.of(type.getEnumConstants()) : List.of();
    }

    private static String title(Class<?> record) {
        return record.getEnclosingClass() == null
                ? record.getSimpleName()
                : record.getEnclosingClass().getSimpleName() + " " + record.getSimpleName();
    }

    private static String link(Class<?> record) {
        return "[%s](#%s)".formatted(title(record), title(record).toLowerCase().replace(' ', '-'));
    }
}
