package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.SCRIPTS_MIXED;
import static paperbark.finding.FindingCode.TEXT_CLEANED;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CleanTextTest {
    @ParameterizedTest
    @ValueSource(strings = {"Zoë", "Łukasz", "Nguyễn", "李明", "O’Brien", "Straße", "10 µm"})
    void realLettersStay(String name) {
        String expected = name.replace('µ', 'μ');
        assertThat(CleanText.of(name).text()).isEqualTo(expected);
        assertThat(CleanText.of(name).troubles()).isEmpty();
    }

    @Test
    void aLetterAndItsAccentBecomeOneCharacter() {
        assertThat(CleanText.of("Zoe\u0308").text()).isEqualTo("Zo\u00EB");
    }

    @ParameterizedTest
    @CsvSource({
        "'\u00A0 a \u00A0\u00A0 b\u2003', 'a b'",
        "'a\r\nb\tc\u2028d\u0085e', 'a b c d e'",
        "'\uFF21\uFF11\u3000\u2460', 'A1 1'",
    })
    void spacesAndLineBreaksBecomeOneSpaceWithoutATrouble(String raw, String text) {
        assertThat(CleanText.of(raw).text()).isEqualTo(text);
        assertThat(CleanText.of(raw).troubles()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a\u200Bb",
                "a\u00ADb",
                "a\u202Eb",
                "\uFEFFab",
                "a\u0007b",
                "a\uFFFFb",
                "a\uD800b",
                "ab\u0000",
                "a\u2060b"
            })
    void whatCannotBeSeenIsTakenOutAndSaid(String raw) {
        CleanText clean = CleanText.of(raw);
        assertThat(clean.text()).isEqualTo("ab");
        assertThat(clean.troubles()).extracting(CellTrouble::code).containsExactly(TEXT_CLEANED);
    }

    @ParameterizedTest
    @CsvSource({"TD-\u0410B1, Cyrillic", "\u039Fwner, Greek", "12\u0421, Cyrillic"})
    void aWordOfTwoAlphabetsIsNamed(String raw, String alphabet) {
        CleanText clean = CleanText.of(raw);
        assertThat(clean.text()).isEqualTo(raw);
        assertThat(clean.troubles()).extracting(CellTrouble::code).containsExactly(SCRIPTS_MIXED);
        assertThat(clean.troubles().get(0).fact()).contains(alphabet);
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u0410\u043D\u043D\u0430 Ann", "5 k\u03A9", "\u0394T 10", "3 \u03BCm"})
    void wholeWordsOfAnotherAlphabetAndUnitSignsAreFine(String raw) {
        assertThat(CleanText.of(raw).troubles()).isEmpty();
    }
}
