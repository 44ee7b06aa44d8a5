package paperbark.output.table;

import java.util.Locale;
import paperbark.finding.Severity;
import paperbark.output.CaseFile;

/** Whether the papers of a job can go out. */
public enum JobStatus {
    /** All papers are in the pack and nothing needs a look. */
    READY("ready"),
    /** All papers are in the pack, but somebody must look at a finding. */
    LOOK("ready, look at it"),
    /** At least one paper is held by a stop. */
    HELD("held");

    private final String word;

    JobStatus(String word) {
        this.word = word;
    }

    /** The word shown to people. */
    public String word() {
        return word;
    }

    /** Name of the shape that stands for it on pages: the same in lower case. */
    public String shape() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The status of a job. */
    public static JobStatus of(CaseFile file) {
        if (file.isHeld()) {
            return HELD;
        }
        return file.worst().filter(w -> w.compareTo(Severity.CHECK) >= 0).isPresent()
                ? LOOK
                : READY;
    }
}
