package paperbark.answer;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.offer.Comparison;
import paperbark.value.SchemeName;

/**
 * How the certificates of one job come about, and beside it how they would with other facts.
 *
 * @param job its number
 * @param where its row in words
 * @param real with the facts of the register
 * @param supposed with the facts supposed, where any are
 * @param offers the offers for its certificates as the register has it, scheme by scheme
 * @param findings everything noticed about the job as the register has it
 */
@JsonPropertyOrder({"job", "where", "register", "supposed", "differences", "offers", "findings"})
public record Explanation(
        String job,
        String where,
        @JsonProperty("register") Side real,
        Optional<Side> supposed,
        List<Comparison> offers,
        List<Finding> findings) {

    /** Keeps the lists from being changed. */
    public Explanation {
        offers = List.copyOf(offers);
        findings = List.copyOf(findings);
    }

    /**
     * One of the two.
     *
     * @param facts what goes in
     * @param schemes what comes out, one entry for each scheme that there is, in one order
     * @param findings what the schemes noticed
     */
    public record Side(List<Fact> facts, List<SchemeWorking> schemes, List<Finding> findings) {

        /** Keeps the lists from being changed. */
        public Side {
            facts = List.copyOf(facts);
            schemes = List.copyOf(schemes);
            findings = List.copyOf(findings);
        }
    }

    /**
     * A named fact.
     *
     * @param name what it is
     * @param value its value in words
     * @param from where it comes from, e.g. {@code cell F14}; empty where it was worked out
     */
    public record Fact(String name, String value, String from) {}

    /**
     * What the supposed facts change.
     *
     * @param scheme which scheme
     * @param real certificates with the facts of the register; empty where there is no number
     * @param supposed certificates with the facts supposed
     */
    public record Difference(
            SchemeName scheme,
            @JsonProperty("register") Optional<Integer> real,
            Optional<Integer> supposed) {

        /** How many more, less than nothing for fewer; empty unless both numbers are known. */
        @JsonProperty
        public Optional<Integer> more() {
            return real.flatMap(r -> supposed.map(s -> s - r));
        }

        /** In words, e.g. {@code 14 as the register says, 11 as supposed: 3 fewer}. */
        public String inWords() {
            return "%s: %s as the register says, %s as supposed%s"
                    .formatted(
                            scheme.word(),
                            real.map(String::valueOf).orElse("no number"),
                            supposed.map(String::valueOf).orElse("no number"),
                            more().map(Difference::moreOrFewer).orElse(""));
        }

        private static String moreOrFewer(int more) {
            if (more == 0) {
                return ": the same";
            }
            return ": " + Math.abs(more) + (more > 0 ? " more" : " fewer");
        }
    }

    /** The difference in certificates for each scheme claimed; none where nothing is supposed. */
    @JsonProperty
    public List<Difference> differences() {
        List<Difference> all = new ArrayList<>();
        supposed.ifPresent(
                other -> {
                    for (int i = 0; i < real.schemes().size(); i++) {
                        SchemeWorking one = real.schemes().get(i);
                        if (one.claimed()) {
                            all.add(
                                    new Difference(
                                            one.scheme(),
                                            one.certificates(),
                                            other.schemes().get(i).certificates()));
                        }
                    }
                });
        return all;
    }
}
