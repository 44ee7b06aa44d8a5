package paperbark.answer;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonIncludeProperties;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import com.fasterxml.jackson.databind.util.StdConverter;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.List;
import paperbark.entitlement.Step;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;
import paperbark.offer.Comparison;
import paperbark.rules.RuleLine;
import paperbark.value.DateRange;
import paperbark.value.SchemeName;

/**
 * Answers as JSON for other programs, written from their records: {@link Explanation}, {@link
 * RulesInForce} and, of a run, {@link OutcomeLines}. What is not known is not there.
 */
public final class Json {
    private static final ObjectMapper JSON =
            JsonMapper.builder()
                    .addModules(new Jdk8Module(), new JavaTimeModule())
                    .defaultPropertyInclusion(
                            JsonInclude.Value.empty()
                                    .withValueInclusion(JsonInclude.Include.NON_ABSENT))
                    .enable(SerializationFeature.INDENT_OUTPUT)
                    .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                    .addMixIn(Finding.class, AsFindingLine.class)
                    .addMixIn(RuleRef.class, WithSureness.class)
                    .addMixIn(RuleLine.class, AroundItsReference.class)
                    .addMixIn(Comparison.class, StepsOnly.class)
                    .addMixIn(SchemeName.class, Word.class)
                    .build();

    private Json() {}

    /** The answer as indented text. */
    public static String of(Record answer) {
        try {
            return JSON.writeValueAsString(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    @JsonSerialize(converter = ToFindingLine.class)
    private interface AsFindingLine {}

    private static final class ToFindingLine extends StdConverter<Finding, FindingLine> {
        @Override
        public FindingLine convert(Finding finding) {
            return FindingLine.of(finding);
        }
    }

    private interface WithSureness {
        @JsonProperty
        String sure();
    }

    private interface AroundItsReference {
        @JsonUnwrapped
        RuleRef ref();

        @JsonProperty("period")
        @JsonSerialize(using = ToStringSerializer.class)
        DateRange inForce();
    }

    @JsonIncludeProperties({"scheme", "steps"})
    private interface StepsOnly {
        @JsonProperty
        List<Step> steps();
    }

    private interface Word {
        @JsonValue
        String word();
    }
}
