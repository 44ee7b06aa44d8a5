package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.junit.jupiter.api.Test;

class TokensTest {
    private static COSBase object(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        return new Tokens(bytes, 0, bytes.length).object();
    }

    private static String written(COSBase object) {
        Buffer out = new Buffer();
        new ObjectText(out, o -> 0).write(object);
        return out.toString();
    }

    @Test
    void readWhatWasWritten() {
        String text = "<</S/TD/P 12 0 R/K[1 2<</Type/OBJR/Obj 7 0 R>>]/Alt<4f6b>/Odd#20name -1.5>>";
        COSDictionary read = (COSDictionary) object(text);
        assertThat(read.getString(COSName.ALT)).isEqualTo("Ok");
        assertThat(((COSArray) read.getItem(COSName.K)).size()).isEqualTo(3);
        assertThat(((Ref) read.getItem(COSName.P)).number()).isEqualTo(12);
        assertThat(written(read)).isEqualTo(text);
    }

    @Test
    void readStringsInBracketsWithWhatIsEscapedInThem() {
        assertThat(written(object("(a\\(b\\)c(d)\\\\\\101\\r)")))
                .isEqualTo("<61286229632864295c410d>");
    }

    @Test
    void moveReferencesAndNothingThatLooksLikeOne() throws Exception {
        String text = "<</H1/F2/K[3 0 R 10 0 0]/T<33203020 52>/P 4 0 R/W 5>>";
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        Buffer out = new Buffer();
        Moving.copy(new PackReader.Piece(bytes, 0, bytes.length), n -> n + 100, out);
        assertThat(out.toString())
                .isEqualTo("<</H1/F2/K[103 0 R 10 0 0]/T<33203020 52>/P 104 0 R/W 5>>");
    }

    @Test
    void lengthsAreExactAndShort() {
        assertThat(new Buffer().length(Unit.of(679.0875)).toString()).isEqualTo("679.0875");
        assertThat(new Buffer().length(Unit.of(-.05)).toString()).isEqualTo("-.05");
        assertThat(new Buffer().length(Unit.of(3)).length(0).toString()).isEqualTo("30");
    }
}
