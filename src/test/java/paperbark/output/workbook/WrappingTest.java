package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WrappingTest {

    @Test
    void wordsAreNotSplitAcrossLines() {
        assertThat(Wrapping.lines("one two three", 13)).isEqualTo(1);
        assertThat(Wrapping.lines("one two three", 12)).isEqualTo(2);
        assertThat(Wrapping.lines("one two three", 5)).isEqualTo(3);
    }

    @Test
    void aLineMayEndAfterAHyphen() {
        assertThat(Wrapping.lines("SB-1041-a1b2c3.pdf", 18)).isEqualTo(1);
        assertThat(Wrapping.lines("SB-1041-a1b2c3.pdf", 17)).isEqualTo(2);
    }

    @Test
    void aWordLongerThanTheLineIsSplit() {
        assertThat(Wrapping.lines("abcdefghij", 5)).isEqualTo(2);
        assertThat(Wrapping.lines("abcdefghijk", 5)).isEqualTo(3);
    }

    @Test
    void everyLineBreakCounts() {
        assertThat(Wrapping.lines("a\nb\n\nc", 20)).isEqualTo(4);
        assertThat(Wrapping.lines("", 20)).isEqualTo(1);
    }
}
