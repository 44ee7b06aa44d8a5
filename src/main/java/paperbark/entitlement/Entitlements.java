package paperbark.entitlement;

import java.util.List;
import java.util.Optional;
import paperbark.value.SchemeName;

/**
 * What a job earns under all schemes.
 *
 * @param all one entry for each scheme that the job claims under
 */
public record Entitlements(List<Entitlement> all) {

    /** Keeps the list from being changed. */
    public Entitlements {
        all = List.copyOf(all);
    }

    /** The entry of one scheme. */
    public Optional<Entitlement> of(SchemeName scheme) {
        return all.stream().filter(e -> e.scheme() == scheme).findFirst();
    }
}
