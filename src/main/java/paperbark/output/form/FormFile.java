package paperbark.output.form;

import java.util.Optional;

/**
 * A form as the buyer gave it, with its mapping table.
 *
 * @param name the name that the tables use, e.g. {@code whimbrel}
 * @param pdf the form; not to be changed
 * @param table the mapping table as bytes of a CSV file; empty where there is none
 * @param unread why the form or its table was not read, one sentence; empty where both were
 */
record FormFile(String name, byte[] pdf, byte[] table, Optional<String> unread) {

    /** A form that was read. */
    FormFile(String name, byte[] pdf, byte[] table) {
        this(name, pdf, table, Optional.empty());
    }

    /** The form's file for findings. */
    String pdfName() {
        return FormFolder.FOLDER + name + ".pdf";
    }

    /** The mapping table's file for findings. */
    String tableName() {
        return FormFolder.FOLDER + name + ".csv";
    }
}
