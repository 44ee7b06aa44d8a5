package paperbark.ledger;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.firm.Buyer;
import paperbark.firm.Person;
import paperbark.firm.Seller;
import paperbark.job.Job;
import paperbark.value.SchemeName;

/**
 * The facts of a job as short hashes by name: enough to say which of them changed since an earlier
 * batch, without keeping the facts themselves. Where and how they were written does not count.
 */
public final class JobPrint {
    // Long enough that two values of one field never share it by chance.
    private static final int LENGTH = 16;
    // What the firm's tables add to a name is not a fact of the job.
    private static final Set<String> NOT_FACTS =
            Set.of(
                    "origin",
                    "unread",
                    "reference",
                    "corrects",
                    "maker",
                    "product",
                    "plumberLicence",
                    "electricianLicence");

    private final Map<String, String> prints = new TreeMap<>();

    private JobPrint() {}

    /**
     * The prints by the fact's name in words, e.g. {@code tank serial}; facts that are not known
     * have none. The day and crew of the visit count while the job is only booked.
     */
    public static Map<String, String> of(Job job) {
        JobPrint print = new JobPrint();
        for (RecordComponent part : Job.class.getRecordComponents()) {
            boolean over = part.getName().equals("visit") && job.isInstalled();
            if (!over) {
                print.add(part.getName(), value(part, job));
            }
        }
        return Map.copyOf(print.prints);
    }

    /** The names of the facts in which two differ, in the order of the alphabet. */
    static Set<String> changed(Map<String, String> one, Map<String, String> other) {
        return Stream.concat(one.keySet().stream(), other.keySet().stream())
                .filter(
                        name ->
                                !Optional.ofNullable(one.get(name))
                                        .equals(Optional.ofNullable(other.get(name))))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private void add(String name, Object value) {
        if (NOT_FACTS.contains(name)) {
            return;
        }
        if (value instanceof Optional<?> optional) {
            optional.ifPresent(inner -> add(name, inner));
        } else if (value instanceof Map<?, ?> byScheme) {
            byScheme.forEach((scheme, claim) -> add(String.valueOf(scheme), claim));
        } else if (value instanceof Record part
                && part.getClass().getName().startsWith("paperbark.job.")) {
            for (RecordComponent component : part.getClass().getRecordComponents()) {
                add(within(name, component.getName()), value(component, part));
            }
        } else {
            String text = text(value);
            if (!text.isEmpty()) {
                prints.put(inWords(name), DigestUtils.sha256Hex(text).substring(0, LENGTH));
            }
        }
    }

    /** Names are told apart by scheme and trade only where one name would serve several. */
    private static String within(String name, String component) {
        if (Arrays.stream(SchemeName.values()).anyMatch(s -> s.name().equals(name))) {
            return name + " " + component;
        }
        return switch (name) {
            case "oldHeater" -> "old " + component;
            case "owner" -> "owner " + component;
            case "site" -> "site " + component;
            case "visit" -> "visit " + component;
            case "payment" -> component.equals("form") ? "benefit form" : component;
            default -> component;
        };
    }

    private static String inWords(String name) {
        String words =
                name.replaceAll("makerName$", "maker")
                        .replaceAll("declared(?=[A-Z])", "")
                        .replaceAll("(?<=[a-z])(?=[A-Z])", " ");
        String plain = words.toLowerCase(Locale.ROOT);
        for (SchemeName scheme : SchemeName.values()) {
            plain = plain.replaceFirst("^" + scheme.key() + " ", scheme.word() + " ");
        }
        return plain;
    }

    // What the firm's tables say of somebody is not a fact of the job: only who it is.
    private static String text(Object value) {
        if (value instanceof Collection<?> all) {
            return all.stream().map(JobPrint::text).collect(Collectors.joining("\n"));
        }
        if (value instanceof Person person) {
            return person.name();
        }
        if (value instanceof Seller seller) {
            return seller.name();
        }
        if (value instanceof Buyer buyer) {
            return buyer.name();
        }
        if (value instanceof Optional<?> optional) {
            return optional.map(JobPrint::text).orElse("");
        }
        if (value instanceof Record small) {
            StringBuilder all = new StringBuilder();
            for (RecordComponent component : small.getClass().getRecordComponents()) {
                all.append(text(value(component, small))).append('\t');
            }
            return all.toString().strip();
        }
        return value.toString();
    }

    private static Object value(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException(e);
        }
    }
}
