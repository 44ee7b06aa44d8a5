package paperbark.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a path, and says in a sentence why a text is none. */
final class PathConverter implements ITypeConverter<Path> {
    @Override
    public Path convert(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(
                    text.chars().allMatch(c -> c >= ' ' && c < 0x7F)
                            ? "\"" + text + "\" can be no name of a file here."
                            : "\""
                                    + text
                                    + "\" has letters that the program cannot read as it was started. Start it with LC_ALL=C.UTF-8 set.");
        }
    }
}
