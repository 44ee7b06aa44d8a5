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
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiPredicate;

/**
 * Lets a template fetch files of the template folder, embedded {@code data:} pictures and the logo,
 * and nothing else. Remembers what it refused. One for each document.
 */
final class ResourceGate implements BiPredicate<String, ExternalResourceType> {
    /** By which the head of pages asks for the logo. */
    static final String LOGO = "logo:firm.png";

    // As for the style sheet itself, and as for the logo.
    private static final long LARGEST_STYLE = 1_000_000;
    private static final long LARGEST_PICTURE = 10_000_000;

    private final Optional<Path> folder;
    private final Optional<byte[]> logo;
    private final Map<String, String> refused = new TreeMap<>();

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

    private static final String NO_FILE = "which is no file of the template folder";

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
        Optional<String> why =
                uri.startsWith("data:") || uri.equals(LOGO) && logo.isPresent()
                        ? ofBytes(uri, type)
                        : ofFile(uri, type);
        why.ifPresent(reason -> refused.putIfAbsent(uri, reason));
        return why.isEmpty();
    }

    private static Optional<String> ofBytes(String uri, ExternalResourceType type) {
        if (type != ExternalResourceType.IMAGE_RASTER) {
            return Optional.of(NO_FILE);
        }
        int comma = uri.indexOf(',');
        if (uri.equals(LOGO) || comma < 0 || !uri.substring(0, comma).endsWith(";base64")) {
            return Optional.empty();
        }
        try {
            byte[] picture = Base64.getMimeDecoder().decode(uri.substring(comma + 1));
            return PictureSize.excess(new ByteArrayInputStream(picture));
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private Optional<String> ofFile(String uri, ExternalResourceType type) {
        if (folder.isEmpty() || !uri.startsWith("file:")) {
            return Optional.of(NO_FILE);
        }
        try {
            // The real path, so that no link leads out of the folder.
            Path file = Path.of(URI.create(uri)).toRealPath();
            if (!file.startsWith(folder.get()) || !Files.isRegularFile(file)) {
                return Optional.of(NO_FILE);
            }
            boolean picture = type == ExternalResourceType.IMAGE_RASTER;
            long most = picture ? LARGEST_PICTURE : LARGEST_STYLE;
            if (Files.size(file) > most) {
                return Optional.of(
                        String.format(
                                Locale.ROOT,
                                "which has %,d bytes; the limit is %,d",
                                Files.size(file),
                                most));
            }
            try (InputStream in = Files.newInputStream(file)) {
                return picture ? PictureSize.excess(in) : Optional.empty();
            }
        } catch (IOException | IllegalArgumentException | FileSystemNotFoundException e) {
            return Optional.of(NO_FILE);
        }
    }

    /** The address from which a template names its pictures. */
    String base() {
        return folder.map(f -> f.toUri().toString()).orElse("paperbark:/");
    }

    /** Addresses that were refused, sorted, and why: the end of a sentence. */
    Map<String, String> refused() {
        return refused;
    }
}
