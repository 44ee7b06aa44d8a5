package paperbark.batch;

import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/**
 * Makes what lies beside papers and claims. What cannot be made is a finding and costs nothing
 * else; only what is wrong with the world, such as a full disk, is passed on.
 *
 * <pre>{@code
 * SideProducts beside = new SideProducts("week-47.xlsx");
 * beside.make("summary.xlsx", () -> staging.write("summary.xlsx", SummaryWorkbook.of(view)));
 * }</pre>
 */
public final class SideProducts {
    private static final Logger LOG = System.getLogger("paperbark");
    private final String register;
    private final List<Finding> findings = new ArrayList<>();

    /** For a list of that file name, which findings name. */
    public SideProducts(String register) {
        this.register = register;
    }

    /** A piece of work. */
    @FunctionalInterface
    public interface Making<T> {
        /** Does it. */
        T make() throws IOException;
    }

    /**
     * Makes one file, or says why it is missing.
     *
     * @param file its name as people know it
     * @return empty where it could not be made
     * @throws IOException when the disk does not do its part
     */
    public <T> Optional<T> make(String file, Making<T> work) throws IOException {
        try {
            return Optional.of(work.make());
        } catch (IOException
                | RuntimeException
                | StackOverflowError
                | OutOfMemoryError
                | LinkageError e) {
            passOn(e);
            findings.add(missing(file, e));
            return Optional.empty();
        }
    }

    /** What was noticed so far. */
    public List<Finding> findings() {
        return List.copyOf(findings);
    }

    /** Also notes what somebody else noticed on the way. */
    public void note(List<Finding> noticed) {
        findings.addAll(noticed);
    }

    /** Throws what is not about the product but about the world. */
    static void passOn(Throwable e) throws IOException {
        boolean world =
                Trouble.of(e).filter(t -> t.kind() != Trouble.Kind.DISK).isPresent()
                        || Trouble.isOfFileSystem(e);
        if (world && e instanceof IOException disk) {
            throw disk;
        }
        if (world && e instanceof RuntimeException wrapped) {
            throw wrapped;
        }
    }

    private Finding missing(String file, Throwable e) {
        LOG.log(Level.DEBUG, file + " could not be made", e);
        return Finding.of(
                FindingCode.SIDE_FILE_LACKING,
                new Place.InFile(register),
                file + " could not be made; papers and claims are whole.",
                "Save the register as a new .xlsx file for the next time, and tell us.");
    }
}
