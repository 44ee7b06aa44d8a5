package paperbark.finding;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import paperbark.value.SchemeName;

/** What a stop keeps from being produced. A paper without a concern always goes out. */
public final class Concern implements Comparable<Concern> {
    private static final List<Concern> ALL = new ArrayList<>();

    /** The whole file: no row of it can be used. */
    public static final Concern REGISTER = new Concern("REGISTER");

    /** The whole row: no paper of the job can be made. */
    public static final Concern JOB = new Concern("JOB");

    private static final Map<SchemeName, Concern> BY_SCHEME = byScheme();

    /** The maker's warranty registration. */
    public static final Concern WARRANTY = new Concern("WARRANTY");

    /** The record of the heater taken out. */
    public static final Concern OLD_HEATER = new Concern("OLD_HEATER");

    /** The claims under all schemes. */
    public static final Set<Concern> CLAIMS = Set.copyOf(BY_SCHEME.values());

    /** The claims under all schemes, and the warranty. */
    public static final Set<Concern> CLAIMS_AND_WARRANTY = with(WARRANTY);

    private final String name;
    private final int order;

    private Concern(String name) {
        this.name = name;
        this.order = ALL.size();
        ALL.add(this);
    }

    /** The claim under a scheme: the paper that assigns its certificates. */
    public static Concern claim(SchemeName scheme) {
        return BY_SCHEME.get(scheme);
    }

    /** All of them, in their order. */
    public static List<Concern> values() {
        return List.copyOf(ALL);
    }

    @Override
    public int compareTo(Concern other) {
        return Integer.compare(order, other.order);
    }

    /** The name for templates and other programs, e.g. {@code OLD_HEATER}. */
    @Override
    public String toString() {
        return name;
    }

    /** The name in words, e.g. {@code old heater}; a scheme's stays as the law writes it. */
    public String words() {
        return CLAIMS.contains(this) ? name : name.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static Map<SchemeName, Concern> byScheme() {
        Map<SchemeName, Concern> all = new EnumMap<>(SchemeName.class);
        for (SchemeName scheme : SchemeName.values()) {
            all.put(scheme, new Concern(scheme.word()));
        }
        return all;
    }

    private static Set<Concern> with(Concern other) {
        Set<Concern> all = new LinkedHashSet<>(CLAIMS);
        all.add(other);
        return Set.copyOf(all);
    }
}
