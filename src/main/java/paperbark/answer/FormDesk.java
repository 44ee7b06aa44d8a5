package paperbark.answer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import paperbark.disk.Disk;
import paperbark.finding.Finding;
import paperbark.output.form.FieldList;
import paperbark.output.form.Forms;
import paperbark.output.form.Grid;
import paperbark.sheet.Reading;

/** What an admin needs once for each of the buyers' own forms. */
public final class FormDesk {
    private FormDesk() {}

    /**
     * A mapping table to start from: the fields of a form, or the headings where it has none.
     *
     * @return the table as CSV; no result where the form cannot be used
     * @throws IOException when the file cannot be read
     */
    public static Reading<String> fields(Path form) throws IOException {
        return FieldList.of(String.valueOf(form.getFileName()), bytes(form));
    }

    /**
     * Writes a copy of a form that is ruled in millimetres from the top left.
     *
     * @return why there is no copy; empty where there is one
     * @throws IOException when a file cannot be read or written
     */
    public static List<Finding> grid(Path form, Path copy) throws IOException {
        Reading<byte[]> ruled = Grid.of(String.valueOf(form.getFileName()), bytes(form));
        if (ruled.result().isPresent()) {
            Disk.replace(copy, ruled.result().get());
        }
        return ruled.findings();
    }

    /** No more than shows that it is too much. */
    private static byte[] bytes(Path form) throws IOException {
        try (InputStream in = Files.newInputStream(form)) {
            return in.readNBytes(Forms.LARGEST + 1);
        }
    }
}
