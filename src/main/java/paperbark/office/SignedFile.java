package paperbark.office;

import java.nio.file.Path;

/** Where the pages of a paper lie that came back. */
final class SignedFile {
    private SignedFile() {}

    /**
     * The file, named after job and paper, and after the version from the second on.
     *
     * @param title the paper's name for people
     * @param version which version of the job it was printed for, from 1
     */
    static Path of(Office office, String job, String title, int version) {
        return office.signed()
                .resolve(Office.signedFolder(job))
                .resolve(Office.signedName(job, title, version));
    }
}
