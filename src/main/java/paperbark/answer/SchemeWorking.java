package paperbark.answer;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.answer.Explanation.Fact;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Step;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/**
 * The working of one job under one scheme.
 *
 * @param scheme which scheme
 * @param earned what the job earns under it; empty where it claims nothing
 */
@JsonPropertyOrder({
    "scheme",
    "claimed",
    "certificates",
    "zone",
    "activity",
    "lastDay",
    "provisional",
    "demo",
    "steps"
})
public record SchemeWorking(SchemeName scheme, @JsonIgnore Optional<Entitlement> earned) {

    /** Whether the job claims under it. */
    @JsonProperty
    public boolean claimed() {
        return earned.isPresent();
    }

    /** Whole number of certificates, where there is one. */
    @JsonProperty
    public Optional<Integer> certificates() {
        return earned.flatMap(Entitlement::certificates);
    }

    @JsonProperty
    private Optional<Integer> zone() {
        return earned.flatMap(Entitlement::zone);
    }

    @JsonProperty
    private Optional<String> activity() {
        return earned.flatMap(Entitlement::activity);
    }

    @JsonProperty
    private Optional<LocalDate> lastDay() {
        return earned.flatMap(Entitlement::lastDay);
    }

    @JsonProperty
    private boolean provisional() {
        return earned.filter(Entitlement::provisional).isPresent();
    }

    @JsonProperty
    private boolean demo() {
        return earned.filter(Entitlement::isDemo).isPresent();
    }

    /** The working, in order. */
    @JsonProperty
    public List<Step> steps() {
        return earned.map(Entitlement::steps).orElse(List.of());
    }

    /** What came out, in words. */
    public List<Fact> result() {
        List<Fact> result = new ArrayList<>();
        add(
                result,
                "Certificates",
                certificates().map(String::valueOf).orElse("cannot be worked out"));
        zone().ifPresent(z -> add(result, "Zone", z.toString()));
        activity().ifPresent(a -> add(result, "Activity", a));
        add(
                result,
                "Last safe day",
                lastDay().map(Days::show).orElse("open until the heater is installed"));
        if (provisional()) {
            add(result, "Provisional", "until the heater is in and its day is known");
        }
        if (demo()) {
            add(result, "Never claim with it", "figures invented for the demonstration went in");
        }
        return result;
    }

    private static void add(List<Fact> result, String name, String value) {
        result.add(new Fact(name, value, ""));
    }

    /** The step of that label. */
    public Optional<Step> step(String label) {
        return steps().stream().filter(s -> s.label().equals(label)).findFirst();
    }
}
