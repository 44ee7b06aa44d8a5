package paperbark.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNoException;

import freemarker.template.TemplateHashModel;
import freemarker.template.TemplateModelException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.output.paper.Diary;

/**
 * {@code templates/DATA-MODEL.md} lists the facts and shared parts that there are; {@code
 * -Dmodel.renew} writes it anew.
 */
class DataModelTest {
    private static final Path PAGE = Path.of("templates/DATA-MODEL.md");
    private static final DataModel MODEL = new DataModel();
    private static final String HEAD =
            """
            # What a template can print

            Written by the program's own tests from the records and the template files, so that it is never out of date.

            `${job.reference}` prints a fact. One that may be missing is written `${(job.owner.phone)!""}`: the brackets cover every step of the
            way, and what stands behind the `!` takes its place. `<#if (job.corrects)??>` asks whether it is there. A name that cannot be is a
            mistake, with a finding that says the nearest. Days and amounts are texts already. "Yes or no" is asked with `<#if isHeld>`, and
            printed with `${p.yesNo(isHeld)}`. A list is gone through with `<#list toDo as t>${t.what}</#list>`.

            """;

    @Test
    void thePageTellsWhatThereIs() throws IOException {
        String page =
                HEAD
                        + MODEL.markdown()
                        + "\n## The shared parts\n\nEach with its parameters, and what stands in for those left out. Text between"
                        + " the tags of a part comes to stand within it.\n"
                        + MacroLibrary.markdown();
        if (Boolean.getBoolean("model.renew") && !"true".equals(System.getenv("CI"))) {
            Files.writeString(PAGE, page);
        }

        assertThat(Files.readString(PAGE)).isEqualTo(page);
        assertThat(MODEL.unexplained()).as("every fact needs a word in its source").isEmpty();
    }

    @Test
    void theRecordsHaveTheNamesThatTemplatesSee() {
        for (CaseFile file : List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump())) {
            compare(file);
            Diary diary =
                    Diary.of(
                            file.job(),
                            file.doneOn(),
                            file.firm().name(),
                            file.firm().workmanshipYears());
            compare(diary);
            file.papers().forEach(DataModelTest::compare);
        }
    }

    /** The names of a record's view, and of all records in it. */
    private static void compare(Record record) {
        Map<String, Object> view = TemplateModel.of(record);
        Set<String> told = MODEL.records().get(record.getClass()).keySet();
        assertThat(told).as(record.getClass().getSimpleName()).containsAll(view.keySet());
        assertThatNoException().isThrownBy(() -> askFor(told, view));
        Arrays.stream(record.getClass().getRecordComponents())
                .forEach(
                        c -> {
                            try {
                                values(c.getAccessor().invoke(record))
                                        .filter(r -> TemplateModel.of(r).size() > 0)
                                        .filter(r -> MODEL.records().containsKey(r.getClass()))
                                        .forEach(DataModelTest::compare);
                            } catch (ReflectiveOperationException e) {
                                throw new IllegalStateException(e);
                            }
                        });
    }

    /** A name that cannot be is refused by the view itself. */
    private static void askFor(Set<String> told, Map<String, Object> view)
            throws TemplateModelException {
        TemplateHashModel seen = (TemplateHashModel) new FactMap.Wrapper().wrap(view);
        for (String name : told) {
            seen.get(name);
        }
    }

    private static Stream<Record> values(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.stream().flatMap(DataModelTest::values);
        }
        if (value instanceof java.util.Collection<?> all) {
            return all.stream().flatMap(DataModelTest::values);
        }
        return value instanceof Record record ? Stream.of(record) : Stream.empty();
    }

    static Stream<Arguments> parts() {
        return MacroLibrary.files().entrySet().stream()
                .flatMap(
                        file ->
                                MacroLibrary.parts(file.getValue()).stream()
                                        .map(part -> Arguments.of(file.getKey(), part)));
    }

    @ParameterizedTest
    @MethodSource("parts")
    void theExampleOfEveryPartWorksWithFactsAndWithout(String as, MacroLibrary.Part part)
            throws Exception {
        assertThat(part.words()).as("what %s is for", part.name()).isNotEmpty();
        assertThat(part.example()).contains(as + "." + part.name());
        Path folder = Files.createTempDirectory("example");
        String imports =
                MacroLibrary.files().entrySet().stream()
                        .map(f -> "<#import \"/%s\" as %s>".formatted(f.getValue(), f.getKey()))
                        .collect(Collectors.joining());
        Files.writeString(folder.resolve("example.ftlh"), imports + part.example());
        TemplateEngine engine = new TemplateEngine(Optional.of(folder));

        for (CaseFile file : List.of(CaseFiles.installedSolar(), CaseFiles.bare())) {
            Map<String, Object> model = new LinkedHashMap<>(TemplateModel.of(file));
            assertThat(engine.render("example.ftlh", model)).doesNotContain("${");
        }
        Files.delete(folder.resolve("example.ftlh"));
        Files.delete(folder);
    }

    @Test
    void everySharedPartOfThePapersIsInTheLibrary() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("templates"))) {
            List<String> withParts =
                    files.filter(f -> f.toString().endsWith(".ftlh"))
                            .filter(f -> !f.getFileName().toString().startsWith("index"))
                            .filter(f -> !MacroLibrary.parts(f.getFileName().toString()).isEmpty())
                            .map(f -> f.getFileName().toString())
                            .toList();
            assertThat(MacroLibrary.files().values())
                    .containsExactlyInAnyOrderElementsOf(withParts);
        }
    }
}
