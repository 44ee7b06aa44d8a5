package paperbark.packaged;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import paperbark.outside.Outside;

/** A command window with a person at it, who answers each question once it is asked. */
final class Console {
    private static final String ASKED = ": ";

    private final Process process;
    private final StringBuilder shown = new StringBuilder();

    private Console(Process process) {
        this.process = process;
    }

    /**
     * Runs a command and answers its questions in turn.
     *
     * @param environment all that the command knows of its surroundings
     * @param answers each with the end of the question that it is for
     * @return what the window showed, typed answers too, and the exit code
     */
    static Outside.Result talk(
            Path folder,
            String command,
            Map<String, String> environment,
            List<Map.Entry<String, String>> answers)
            throws Exception {
        Outside.needs("script");
        ProcessBuilder builder =
                new ProcessBuilder("script", "-qefc", command, "/dev/null")
                        .directory(folder.toFile())
                        .redirectErrorStream(true);
        builder.environment().clear();
        builder.environment().putAll(environment);
        Console console = new Console(builder.start());
        try {
            for (Map.Entry<String, String> answer : answers) {
                console.until(answer.getKey() + ASKED);
                console.answer(answer.getValue());
            }
            console.until("");
        } finally {
            console.process.destroy();
        }
        return new Outside.Result(
                console.process.exitValue(), console.shown.toString().replace("\r", ""), "");
    }

    private void answer(String text) throws IOException {
        process.getOutputStream().write((text + "\n").getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().flush();
    }

    /**
     * Reads on until the window ends with these words; without any, until the command has ended.
     */
    private void until(String words) throws Exception {
        InputStream out = process.getInputStream();
        while (words.isEmpty() || !shown.toString().endsWith(words)) {
            int next = out.read();
            if (next < 0) {
                if (words.isEmpty() && process.waitFor(1, TimeUnit.MINUTES)) {
                    return;
                }
                throw new AssertionError("\"" + words + "\" was never asked: " + shown);
            }
            shown.append((char) next);
        }
    }
}
