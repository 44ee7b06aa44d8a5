package paperbark.output.paper;

import com.openhtmltopdf.outputdevice.helper.ExternalResourceType;
import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;

/**
 * Lets a template fetch files of the template folder and embedded {@code data:} pictures, and
 * nothing else. Remembers what it refused. One for each document.
 */
final class ResourceGate implements BiPredicate<String, ExternalResourceType> {
    private final Optional<Path> folder;
    private final Set<String> refused = new TreeSet<>();

    /** A gate to the folder, given by its real path. */
    ResourceGate(Optional<Path> folder) {
        this.folder = folder;
    }

    @Override
    public boolean test(String uri, ExternalResourceType type) {
        boolean allowed =
                uri.startsWith("data:")
                        ? type == ExternalResourceType.IMAGE_RASTER
                        : isInFolder(uri);
        if (!allowed) {
            refused.add(uri);
        }
        return allowed;
    }

    private boolean isInFolder(String uri) {
        if (folder.isEmpty() || !uri.startsWith("file:")) {
            return false;
        }
        try {
            // The real path, so that no link leads out of the folder.
            return Path.of(URI.create(uri)).toRealPath().startsWith(folder.get());
        } catch (IOException | IllegalArgumentException | FileSystemNotFoundException e) {
            return false;
        }
    }

    /** The address from which a template names its pictures. */
    String base() {
        return folder.map(f -> f.toUri().toString()).orElse("paperbark:/");
    }

    /** Addresses that were refused, sorted. */
    Set<String> refused() {
        return refused;
    }
}
