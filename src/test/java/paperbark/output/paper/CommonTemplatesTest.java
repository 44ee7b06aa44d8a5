package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.BrokenTemplate;
import paperbark.output.TemplateEngine;

class CommonTemplatesTest {
    private static final int TOO_DEEP = 60_000;

    @TempDir Path folder;

    @Test
    void eachOfThemIsShipped() {
        TemplateEngine engine = new TemplateEngine(Optional.empty());

        assertThat(CommonTemplates.names()).allMatch(engine::has);
    }

    @Test
    void aTemplateCountsAsUsedOnlyOnceItIsAskedFor() {
        TemplateEngine engine = new TemplateEngine(Optional.empty());
        engine.source("paperbark.css");

        CommonTemplates.readAhead(engine);
        assertThat(engine.used()).containsOnlyKeys("paperbark.css");

        engine.has("cover/default.ftlh");
        assertThat(engine.used()).containsOnlyKeys("paperbark.css", "cover/default.ftlh");
        assertThat(engine.used()).isEqualTo(usedBy("cover/default.ftlh"));
    }

    @Test
    void aTemplateReadAheadIsNotReadAgain() throws IOException {
        Path cover = folder.resolve("cover.ftlh");
        Files.writeString(cover, "first");
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));

        engine.readAhead(List.of("cover.ftlh"));
        Files.writeString(cover, "second");

        assertThat(engine.has("cover.ftlh")).isTrue();
        assertThat(engine.used()).isEqualTo(usedOf("first"));
    }

    @Test
    void aBrokenOneIsToldOfWhenItIsNeeded() throws IOException {
        Files.writeString(folder.resolve("cover.ftlh"), "<#if");
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));

        engine.readAhead(List.of("cover.ftlh", "running.ftlh"));
        assertThat(engine.used()).isEmpty();

        engine.has("cover.ftlh");
        assertThat(engine.used()).containsOnlyKeys("cover.ftlh");
    }

    @Test
    void oneThatIsTooDeepToBeReadIsToldOfWhenItIsNeeded() throws IOException {
        String deep = "(".repeat(TOO_DEEP) + "1" + ")".repeat(TOO_DEEP);
        Files.writeString(folder.resolve("cover.ftlh"), "${" + deep + "}");
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));

        engine.readAhead(List.of("cover.ftlh", "running.ftlh"));
        assertThat(engine.used()).isEmpty();

        assertThat(engine.has("cover.ftlh")).isTrue();
        assertThatThrownBy(() -> engine.read("cover.ftlh")).isInstanceOf(BrokenTemplate.class);
    }

    private static Map<String, String> usedBy(String template) {
        TemplateEngine engine = new TemplateEngine(Optional.empty());
        engine.has(template);
        engine.source("paperbark.css");
        return engine.used();
    }

    private Map<String, String> usedOf(String text) throws IOException {
        Files.writeString(folder.resolve("cover.ftlh"), text);
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));
        engine.has("cover.ftlh");
        return engine.used();
    }
}
