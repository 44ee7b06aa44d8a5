package paperbark.output.paper;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceType;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;

/**
 * Lets a template fetch files of the template folder, embedded {@code data:} pictures and the logo,
 * and nothing else. Remembers what it refused. One for each document.
 */
final class ResourceGate implements BiPredicate<String, ExternalResourceType> {
    /** By which the head of pages asks for the logo. */
    static final String LOGO = "logo:firm.png";

    private final Optional<Path> folder;
    private final Optional<byte[]> logo;
    private final Set<String> refused = new TreeSet<>();

    /** A gate to the folder, given by its real path, and to the logo as it was made ready. */
    ResourceGate(Optional<Path> folder, Optional<byte[]> logo) {
        this.folder = folder;
        this.logo = logo;
    }

    /** Lets a renderer ask here for what does not lie in the folder as it is. */
    void serve(PdfRendererBuilder builder) {
        logo.ifPresent(
                bytes -> builder.useProtocolsStreamImplementation(uri -> new Bytes(bytes), "logo"));
    }

    private record Bytes(byte[] all) implements FSStream {
        @Override
        public InputStream getStream() {
            return new ByteArrayInputStream(all);
        }

        @Override
        public Reader getReader() {
            return new InputStreamReader(getStream(), StandardCharsets.UTF_8);
        }
    }

    @Override
    public boolean test(String uri, ExternalResourceType type) {
        boolean allowed =
                uri.startsWith("data:") || uri.equals(LOGO) && logo.isPresent()
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
