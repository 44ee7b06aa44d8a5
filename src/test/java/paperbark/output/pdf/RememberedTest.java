package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is remembered of a text is never taken for that of another. */
class RememberedTest {
    private final List<String> made = new ArrayList<>();
    private final Remembered<String> words =
            new Remembered<>(
                    (text, from, to) -> {
                        made.add(new String(text, from, to - from, StandardCharsets.US_ASCII));
                        return made.get(made.size() - 1);
                    });

    private String of(String word) {
        byte[] text = ("<" + word + ">").getBytes(StandardCharsets.US_ASCII);
        return words.of(text, 1, text.length - 1);
    }

    @Test
    void makesTheSameOnce() {
        assertThat(List.of(of("Tj"), of("re"), of("Tj"))).containsExactly("Tj", "re", "Tj");
        assertThat(made).containsExactly("Tj", "re");
    }

    @Test
    void tellsTextsApartThatShareAPlace() {
        for (int number = 0; number < 5000; number++) {
            assertThat(of("W" + number)).isEqualTo("W" + number);
        }
        // The two have the same hash.
        assertThat(of("Aa")).isEqualTo("Aa");
        assertThat(of("BB")).isEqualTo("BB");
    }
}
