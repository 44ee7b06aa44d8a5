package paperbark.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import paperbark.output.form.FieldList;
import paperbark.output.form.Grid;
import paperbark.sheet.Reading;

/** A form is listed and ruled, or refused with a reason, whatever its bytes. */
class FormFuzz {
    @FuzzTest(maxDuration = "10m")
    void aFormIsUsedOrRefused(byte[] content) {
        told(FieldList.of("theirs.pdf", content));
        told(Grid.of("theirs.pdf", content));
    }

    private static void told(Reading<?> reading) {
        if (reading.result().isEmpty() && reading.findings().isEmpty()) {
            throw new AssertionError("neither used nor refused");
        }
    }
}
