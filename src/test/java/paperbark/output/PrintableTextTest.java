package paperbark.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PrintableTextTest {
    private final PrintableText printable = new PrintableText(Typeface.shared());

    @Test
    void whatCanBePrintedIsLeftAsItIs() {
        Map<String, Object> model =
                Map.of("owner", Map.of("name", "Łukasz"), "notes", List.of("line\nline", 3));
        assertThat(printable.clean(model)).isSameAs(model);
        assertThat(printable.changed()).isEmpty();
    }

    @Test
    void aTextDeepDownIsChangedAndAllElseStays() {
        Map<String, Object> model =
                Map.of(
                        "owner", Map.of("name", "安 Lee", "phone", "0400"),
                        "notes", List.of("plain", "a\u200Bb", List.of("\uD83D\uDE00")));
        assertThat(printable.clean(model))
                .isEqualTo(
                        Map.of(
                                "owner", Map.of("name", "□ Lee", "phone", "0400"),
                                "notes", List.of("plain", "a□b", List.of("□"))));
        assertThat(printable.changed())
                .containsExactlyInAnyOrder("安 Lee", "a\u200Bb", "\uD83D\uDE00");
    }

    @Test
    void whatFindingsRepeatIsChangedAndNotTold() {
        Map<String, Object> model = Map.of("findings", List.of(Map.of("seen", "安")));
        assertThat(printable.clean(model))
                .isEqualTo(Map.of("findings", List.of(Map.of("seen", "□"))));
        assertThat(printable.changed()).isEmpty();
    }
}
