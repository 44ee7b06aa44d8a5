package paperbark.entitlement;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.finding.RuleRef;
import paperbark.value.SchemeName;

/**
 * What a job earns under one scheme.
 *
 * @param scheme which scheme
 * @param certificates whole number of certificates; empty where it cannot be worked out
 * @param zone climate zone used
 * @param activity code of the scheme's activity, where it has any
 * @param lastDay last safe day for creating the certificates; empty while the day of installation
 *     is open
 * @param provisional whether the work is not done yet, or its day not known
 * @param steps the working, in order
 */
@RecordBuilder
public record Entitlement(
        SchemeName scheme,
        Optional<Integer> certificates,
        Optional<Integer> zone,
        Optional<String> activity,
        Optional<LocalDate> lastDay,
        boolean provisional,
        List<Step> steps) {
    /** Label of the working step of a heater so large that declarations are asked for. */
    public static final String DECLARATIONS = "Declarations for its size";

    /** Label of the step that takes the number of certificates from the register. */
    public static final String FROM_REGISTER = "Number given by the register";

    /** Label of the step that takes the number of certificates from what the buyer has. */
    public static final String WITH_BUYER = "Number that the buyer has";

    /** Keeps the steps from being changed and the count from being negative. */
    public Entitlement {
        steps = List.copyOf(steps);
        if (certificates.isPresent() && certificates.get() < 0) {
            throw new IllegalArgumentException("certificates are never negative");
        }
    }

    /** All rule rows used, each once, in the order of the working. */
    public List<RuleRef> rules() {
        return steps.stream().flatMap(s -> s.rules().stream()).distinct().toList();
    }

    /** Whether the heater is so large that its claim needs the declarations of owner and expert. */
    public boolean needsDeclarations() {
        return steps.stream().anyMatch(s -> s.label().equals(DECLARATIONS));
    }

    /** Whether the number is the register's own and not what the rules give. */
    public boolean isFromRegister() {
        return steps.stream().anyMatch(step -> step.label().equals(FROM_REGISTER));
    }

    /** Whether an invented figure went into it, which every page that shows it must say. */
    public boolean isDemo() {
        return rules().stream().anyMatch(r -> r.confidence().equals("demo"));
    }
}
