package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The measure must be right before a text is held against it. */
class ReadingGradeTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    1 | a the hot tank pipe pipes made work works called live lives means through burns drips stays close
                    1 | cool years looked checked filled moved used lives times while these those leave house mixed closed
                    2 | water heater solar system cannot number people before licence plumber power valley
                    2 | table little bottle handle running cooler seconds needed faulty safely licensed
                    2 | cover maker repair winter washing machine given closing quiet fluid being
                    3 | manual collector serial family warranty telephone electric idea area
                    3 | regulate however another installer important replacement relative
                    4 | certificate electrical responsible usually
                    """)
    void syllablesAreCountedAsTheyAreSpoken(int syllables, String words) {
        for (String word : words.split(" ")) {
            assertThat(ReadingGrade.syllables(word)).as(word).isEqualTo(syllables);
        }
    }

    @Test
    void theGradeIsTheFormulas() {
        // 6 words, 6 syllables, 1 sentence.
        assertThat(ReadingGrade.of(List.of("The cat sat on the mat.")).grade())
                .isCloseTo(0.39 * 6 + 11.8 - 15.59, within(1e-9));
        // 13 words, 24 syllables, 1 sentence: the usual example of a text for grown-ups.
        assertThat(
                        ReadingGrade.of(
                                        List.of(
                                                "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."))
                                .grade())
                .isCloseTo(11.27, within(0.01));
    }

    @Test
    void longSentencesAndLongWordsRaiseIt() {
        double easy = ReadingGrade.of(List.of("Call us. We come. We mend it.")).grade();
        double hard =
                ReadingGrade.of(
                                List.of(
                                        "Rectification of installation deficiencies necessitates notification of the responsible contractor."))
                        .grade();
        assertThat(easy).isLessThan(1);
        assertThat(hard).isGreaterThan(20);
    }

    @Test
    void aPointWithinANumberEndsNoSentence() {
        assertThat(ReadingGrade.sentences("It holds 2.5 litres. It is new.")).hasSize(2);
    }
}
