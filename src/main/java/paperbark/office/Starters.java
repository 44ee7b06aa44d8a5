package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import paperbark.disk.Disk;
import paperbark.disk.Hashes;
import paperbark.disk.Rights;

/**
 * The files of an office folder that start and stop the program by a double-click, and, in {@code
 * schedule}, those that let the computer start it. They name the program where it is, so each is
 * made anew when the program is elsewhere, unless somebody changed it: its last line is a mark that
 * fits only what setup wrote.
 */
public final class Starters {
    /** Where the recipes for the computer lie. */
    static final String SCHEDULE = "schedule";

    private static final String MARK = "Made by setup, and made anew while this fits: ";
    private static final int MARK_LETTERS = 16;

    private final Path folder;
    private final Platform platform;
    private final StartWords words;

    /**
     * The starters of an office folder.
     *
     * @param folder the office folder
     * @param platform what they are for
     * @param program the words that run the program, the first of them a whole path
     */
    public Starters(Path folder, Platform platform, List<String> program) {
        this.folder = folder;
        this.platform = platform;
        this.words = new StartWords(program, folder.toString());
    }

    /**
     * Makes what is missing or names a program elsewhere.
     *
     * @return the files that were made, by name
     * @throws IOException when one cannot be written
     */
    public List<String> complete() throws IOException {
        List<String> made = new ArrayList<>();
        for (Map.Entry<String, String> file : texts().entrySet()) {
            Path target = folder.resolve(file.getKey());
            byte[] content = bytes(file.getKey(), file.getValue());
            if (Files.exists(target) && !isOursAndOlder(target, content)) {
                continue;
            }
            Disk.replace(target, content);
            if (file.getKey().matches(".*\\.(sh|command|desktop)")) {
                Rights.letStart(target);
            }
            made.add(file.getKey());
        }
        return List.copyOf(made);
    }

    /** The files by name, without their marks. */
    Map<String, String> texts() {
        Map<String, String> texts = new LinkedHashMap<>();
        switch (platform) {
            case WINDOWS -> {
                texts.put("start.cmd", StartScripts.startOnWindows(words));
                texts.put("stop.cmd", StartScripts.stopOnWindows(words));
                texts.put(SCHEDULE + "/paperbark-task.xml", Recipes.task(words));
            }
            case MAC -> {
                texts.put("start.command", StartScripts.start(words));
                texts.put("stop.command", StartScripts.stop(words));
                texts.put(SCHEDULE + "/paperbark.office.plist", Recipes.launchAgent(words));
            }
            default -> {
                texts.put("start.sh", StartScripts.start(words));
                texts.put("stop.sh", StartScripts.stop(words));
                texts.put("start.desktop", StartScripts.entry("Start", folder.resolve("start.sh")));
                texts.put("stop.desktop", StartScripts.entry("Stop", folder.resolve("stop.sh")));
                texts.put(SCHEDULE + "/paperbark.service", Recipes.service(words));
                texts.put(SCHEDULE + "/paperbark-look.service", Recipes.look(words));
                texts.put(SCHEDULE + "/paperbark-look.timer", Recipes.timer());
            }
        }
        texts.put(SCHEDULE + "/HOW-TO.txt", Recipes.howTo(platform, folder.resolve(SCHEDULE)));
        return texts;
    }

    private static byte[] bytes(String name, String text) {
        String marked = text + mark(name, text) + "\n";
        return name.endsWith(".cmd")
                ? marked.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8)
                : marked.getBytes(StandardCharsets.UTF_8);
    }

    private static String mark(String name, String text) {
        String mark =
                MARK
                        + Hashes.sha256(text.getBytes(StandardCharsets.UTF_8))
                                .substring(0, MARK_LETTERS);
        if (name.endsWith(".cmd")) {
            return "rem " + mark;
        }
        if (name.matches(".*\\.(xml|plist)")) {
            return "<!-- " + mark + " -->";
        }
        return name.endsWith(".txt") ? mark : "# " + mark;
    }

    private static boolean isOursAndOlder(Path target, byte[] now) throws IOException {
        String there =
                new String(Files.readAllBytes(target), StandardCharsets.UTF_8)
                        .replace("\r\n", "\n");
        String name = target.getFileName().toString();
        int last = there.lastIndexOf('\n', there.length() - 2) + 1;
        String text = there.substring(0, last);
        return there.equals(text + mark(name, text) + "\n")
                && !there.equals(new String(now, StandardCharsets.UTF_8).replace("\r\n", "\n"));
    }
}
