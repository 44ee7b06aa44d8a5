package paperbark.cli;

import java.io.IOException;
import java.nio.file.Path;
import paperbark.batch.Ending;
import paperbark.disk.Disk;
import paperbark.office.LabelDesk;

/** Pages that were made on request, or why they were not. */
final class MadePages {
    private MadePages() {}

    /**
     * Writes the document, or says why there is none.
     *
     * @return the exit code
     */
    static int write(Main.World world, LabelDesk.Result result, Path out) throws IOException {
        if (result.pdf().isEmpty()) {
            result.refused().forEach(world.err()::println);
            world.err().println("Nothing was made.");
            return Ending.USAGE.exitCode();
        }
        Path file = world.directory().resolve(out).normalize();
        Disk.replace(file, result.pdf().get());
        world.out()
                .println(
                        (result.pages() == 1 ? "1 page" : result.pages() + " pages")
                                + " -> "
                                + file);
        return Ending.DONE.exitCode();
    }
}
