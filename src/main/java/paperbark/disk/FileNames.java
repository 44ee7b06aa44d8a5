package paperbark.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** Names of files that are made from names of files. */
public final class FileNames {
    private static final int LONGEST = 40;

    private FileNames() {}

    /** The text as a safe name, for folders: letters of any language and brackets stay. */
    public static String slug(String text) {
        String slug =
                Normalizer.normalize(text, Normalizer.Form.NFC)
                        .replaceAll("[^\\p{L}\\p{M}\\p{N}_()\\[\\]-]+", "-")
                        .replaceAll("^-+|-+$", "");
        int letters = slug.codePointCount(0, slug.length());
        String cut = slug.substring(0, slug.offsetByCodePoints(0, Math.min(LONGEST, letters)));
        return cut.isEmpty() ? "x" : cut;
    }

    /** The name of a file without folders and without its ending. */
    public static String stem(Path file) {
        String name = file.getFileName().toString();
        return name.contains(".") ? name.substring(0, name.lastIndexOf('.')) : name;
    }

    /**
     * A path in a folder that nothing has yet: of that name, or with a number behind its stem,
     * counted from 2.
     */
    public static Path free(Path folder, String name) {
        int number = 1;
        while (Files.exists(numbered(folder, name, number))) {
            number++;
        }
        return numbered(folder, name, number);
    }

    /** The same, where a file that holds exactly this already counts as free. */
    public static Path freeFor(byte[] content, Path folder, String name) throws IOException {
        int number = 1;
        while (isOfOther(content, numbered(folder, name, number))) {
            number++;
        }
        return numbered(folder, name, number);
    }

    /**
     * Names that go together: the same number behind the stem for each, where all are free or hold
     * exactly this already.
     *
     * @param contents what each file is to hold, by its ending with the dot
     */
    public static Map<String, Path> freeFor(Map<String, byte[]> contents, Path folder, String stem)
            throws IOException {
        for (int number = 1; ; number++) {
            Map<String, Path> files = new LinkedHashMap<>();
            boolean free = true;
            for (Map.Entry<String, byte[]> content : contents.entrySet()) {
                Path file = numbered(folder, stem + content.getKey(), number);
                free &= !isOfOther(content.getValue(), file);
                files.put(content.getKey(), file);
            }
            if (free) {
                return files;
            }
        }
    }

    private static boolean isOfOther(byte[] content, Path file) throws IOException {
        return Files.exists(file)
                && !(Files.isRegularFile(file)
                        && Files.size(file) == content.length
                        && Arrays.equals(Files.readAllBytes(file), content));
    }

    private static Path numbered(Path folder, String name, int number) {
        int dot = name.lastIndexOf('.');
        int end = dot > 0 ? dot : name.length();
        String behind = number == 1 ? "" : "-" + number;
        return folder.resolve(name.substring(0, end) + behind + name.substring(end));
    }
}
