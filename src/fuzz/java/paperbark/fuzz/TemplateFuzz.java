package paperbark.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;

/** A template prints something or is broken with a reason, whatever is written in it. */
class TemplateFuzz {
    private final TemplateEngine engine =
            new TemplateEngine(Optional.empty(), new RunLimit(Duration.ofSeconds(2)));
    private int count;

    @FuzzTest(maxDuration = "10m")
    void aTemplatePrintsOrIsBroken(FuzzedDataProvider data) {
        try {
            // Under one name it would be given up after two that have no end.
            engine.renderText(
                    "fuzz-" + count++, data.consumeRemainingAsString(), Map.of("name", "Ada"));
        } catch (BrokenTemplate e) {
            if (e.getMessage().isBlank()) {
                throw new AssertionError("broken without a reason", e);
            }
        }
    }
}
