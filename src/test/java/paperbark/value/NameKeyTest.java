package paperbark.value;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import org.junit.jupiter.api.Test;

class NameKeyTest {
    @Test
    void caseAndSpacingDoNotCount() {
        assertThat(NameKey.of("  Ada\t Lark \n")).isEqualTo("ada lark");
        assertThat(NameKey.of("Ada  Lark")).isEqualTo("ada lark");
        assertThat(NameKey.of("")).isEmpty();
    }

    /** The plain words of java.util.regex.Pattern for it. */
    @Property
    void theQuickLookSaysTheSameAsThePattern(
            @ForAll @CharRange(from = 0, to = ' ') @CharRange(from = 'A', to = 'c') String name) {
        assertThat(NameKey.of(name))
                .isEqualTo(name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT));
    }
}
