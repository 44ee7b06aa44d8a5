package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a console's code page lacks comes out as the nearest plain letters. */
class ConsoleTextTest {
    private static final Charset IBM850 = Charset.forName("IBM850");

    private static String shown(String text, Charset charset) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ConsoleText console = new ConsoleText(out, charset)) {
            console.write(text);
        }
        return out.toString(charset);
    }

    @Test
    void aWindowsConsoleOfCodePage850ShowsItsOwnLettersAndPlainOnesForTheRest() throws IOException {
        assertThat(shown("Müller of Sèvres, 12½ %", IBM850)).isEqualTo("Müller of Sèvres, 12½ %");
        assertThat(shown("Łukasz Novák – “so”…", IBM850)).isEqualTo("?ukasz Novák - \"so\"...");
        assertThat(shown("Nguyễn 王 \ud83d\udd25 x", IBM850)).isEqualTo("Nguyen ? ? x");
    }

    @Test
    void textInUtf8StaysAsItIs() throws IOException {
        String text = "Nguyễn 王 \ud83d\udd25 – “so”…";
        assertThat(shown(text, StandardCharsets.UTF_8)).isEqualTo(text);
    }

    @Test
    void onlyAConsoleOfWindowsHasACodePage() {
        assertThat(ConsoleText.charset("Windows 11", Optional.of(IBM850))).isEqualTo(IBM850);
        assertThat(ConsoleText.charset("Windows 11", Optional.empty()))
                .isEqualTo(StandardCharsets.UTF_8);
        assertThat(ConsoleText.charset("Linux", Optional.of(StandardCharsets.US_ASCII)))
                .isEqualTo(StandardCharsets.UTF_8);
    }
}
