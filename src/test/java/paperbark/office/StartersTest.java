package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import paperbark.outside.Outside;

/** What setup puts into an office folder to start and stop the program works from odd places. */
class StartersTest {
    private static final String ODD = "Büro für 100% \"Heiß\" & $HOME's <wasser>";

    @TempDir private Path folder;

    private Path office() throws IOException {
        return Files.createDirectories(folder.resolve(ODD).resolve("office"));
    }

    /** A program that writes down its words and ends as it is told. */
    private Path program(int exitCode) throws IOException {
        Path home = Files.createDirectories(folder.resolve("Programme ü $x"));
        Path program = home.resolve("paperbark");
        Files.writeString(
                program,
                """
                #!/bin/sh
                for word in "$@"; do printf '%%s\\n' "$word"; done >"%s"
                exit %d
                """
                        .formatted(folder.resolve("words.txt"), exitCode));
        assertThat(program.toFile().setExecutable(true)).isTrue();
        return program;
    }

    private Starters starters(Platform platform, Path program) throws IOException {
        return new Starters(office(), platform, List.of(program.toString()));
    }

    @ParameterizedTest
    @EnumSource(Platform.class)
    void eachPlatformHasItsOwnAndASecondRunMakesNothing(Platform platform) throws IOException {
        Starters starters = starters(platform, program(0));
        List<String> made = starters.complete();

        assertThat(made)
                .contains("schedule/HOW-TO.txt")
                .anyMatch(name -> name.matches("start\\.(sh|command|cmd)"))
                .anyMatch(name -> name.matches("stop\\.(sh|command|cmd)"));
        assertThat(made).allSatisfy(name -> assertThat(office().resolve(name)).isRegularFile());
        assertThat(starters.complete()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "WINDOWS, start.cmd, 'rem [^-]*'",
        "WINDOWS, schedule/paperbark-task.xml, <!-- .* -->",
        "MAC, stop.command, '# .*'",
        "MAC, schedule/paperbark.office.plist, <!-- .* -->",
        "LINUX, stop.sh, '# .*'",
        "LINUX, start.desktop, '# .*'",
        "LINUX, schedule/HOW-TO.txt, '[^#].*'"
    })
    void theLastLineOfEachFileIsARemarkWhereItsKindHasThem(
            Platform platform, String name, String last) throws IOException {
        starters(platform, program(0)).complete();
        List<String> lines = Files.readAllLines(office().resolve(name));
        assertThat(lines.get(lines.size() - 1)).matches(last);
    }

    @Test
    void whatToDoWithTheFilesIsSaidForEachPlatform() throws IOException {
        String where = office().resolve("schedule").toString();
        assertThat(starters(Platform.LINUX, program(0)).texts().get("schedule/HOW-TO.txt"))
                .contains("systemctl --user enable --now paperbark.service")
                .contains(StartWords.shell(List.of(where)) + "/paperbark*");
        assertThat(starters(Platform.MAC, program(0)).texts().get("schedule/HOW-TO.txt"))
                .contains(StartWords.shell(List.of(where + "/paperbark.office.plist")));
        assertThat(starters(Platform.WINDOWS, program(0)).texts().get("schedule/HOW-TO.txt"))
                .contains("/xml \"" + where, "paperbark-task.xml\"");
    }

    @Test
    void theUnitsWatchTheFolderForGoodOrOnce() throws IOException {
        Starters starters = new Starters(office(), Platform.LINUX, List.of("/opt/paperbark"));
        assertThat(starters.texts().get("schedule/paperbark.service"))
                .containsPattern("ExecStart=\"/opt/paperbark\" \"watch\" \".*%% .*\\$\\$HOME");
        assertThat(starters.texts().get("schedule/paperbark-look.service"))
                .contains("ExecStart=\"/opt/paperbark\" \"watch\" \"--once\" \"");
        assertThat(starters.texts().get("start.desktop"))
                .contains("Name=Start Paperbark", "Comment=Attends");
        assertThat(starters.texts().get("stop.desktop"))
                .contains("Name=Stop Paperbark", "Comment=Ends");
    }

    @Test
    void whatSomebodyChangedStaysAndTheRestFollowsTheProgram() throws IOException {
        starters(Platform.LINUX, folder.resolve("old/paperbark")).complete();
        Path changed = office().resolve("start.sh");
        Files.writeString(changed, Files.readString(changed).replace("--open", "--open --poll 5"));
        List<String> made = starters(Platform.LINUX, folder.resolve("new/paperbark")).complete();

        assertThat(made)
                .contains("stop.sh", "schedule/paperbark.service")
                .doesNotContain("start.sh");
        assertThat(changed).content().contains("--poll 5", "old/paperbark");
        assertThat(office().resolve("stop.sh")).content().contains("new/paperbark");
    }

    @Test
    @Tag("slow")
    void theScriptsAttendAndStopTheFolderTheyLieIn() throws IOException {
        starters(Platform.LINUX, program(0)).complete();
        Path words = folder.resolve("words.txt");

        Outside.Result start = Outside.run(folder, "sh", office().resolve("start.sh").toString());
        assertThat(start.exitCode()).as(start.err()).isZero();
        assertThat(Files.readAllLines(words))
                .containsExactly("watch", "--open", office().toRealPath().toString());

        assertThat(Outside.run(folder, "sh", office().resolve("stop.sh").toString()).exitCode())
                .isZero();
        assertThat(Files.readAllLines(words))
                .containsExactly("stop", office().toRealPath().toString());
    }

    @Test
    void theScriptsCanBeStartedByThoseWhoMayReadThem() throws IOException {
        starters(Platform.MAC, program(0)).complete();
        assertThat(office().resolve("start.command")).isExecutable();
        assertThat(office().resolve("schedule/paperbark.office.plist").toFile().canExecute())
                .isFalse();
    }

    @Test
    @Tag("slow")
    void aProgramThatIsGoneIsToldOf() throws IOException {
        starters(Platform.LINUX, folder.resolve("gone/paperbark")).complete();
        Outside.Result start =
                Outside.run(
                        folder,
                        "sh",
                        "-c",
                        "exec \"$0\" </dev/null",
                        office().resolve("start.sh").toString());
        assertThat(start.exitCode()).isEqualTo(23);
        assertThat(start.out()).contains("Run setup again");
    }

    @Test
    void aDesktopEntryHoldsTheScriptsPathThroughBothLayersOfQuoting() throws IOException {
        starters(Platform.LINUX, program(0)).complete();
        String exec =
                Files.readAllLines(office().resolve("start.desktop")).stream()
                        .filter(line -> line.startsWith("Exec="))
                        .findFirst()
                        .orElseThrow()
                        .substring("Exec=".length());
        assertThat(unquotedByADesktop(exec)).isEqualTo(office().resolve("start.sh").toString());
    }

    // Desktop Entry Specification 1.5: first the escapes of every string, then the quoting of Exec.
    private static String unquotedByADesktop(String exec) {
        String string = exec.replace("%%", "%").replace("\\\\", "\\");
        assertThat(string).startsWith("\"").endsWith("\"");
        return string.substring(1, string.length() - 1).replaceAll("\\\\([\"`$\\\\])", "$1");
    }

    @Test
    @Tag("outside")
    void systemdAcceptsItsUnitsAndTimer() throws IOException {
        starters(Platform.LINUX, program(0)).complete();
        // systemd knows a unit by its file name and looks for others beside it.
        Path units = Files.createDirectories(folder.resolve("units"));
        for (String name :
                List.of("paperbark.service", "paperbark-look.service", "paperbark-look.timer")) {
            Files.copy(office().resolve("schedule").resolve(name), units.resolve(name));
            Outside.Result verified =
                    Outside.run(
                            folder,
                            "systemd-analyze",
                            "verify",
                            "--man=no",
                            units.resolve(name).toString());
            assertThat(verified.exitCode()).as(verified.err()).isZero();
            assertThat(verified.err().lines())
                    .as(name)
                    .noneMatch(line -> line.contains(units.toString()) || line.contains(name));
        }
        Path gone = units.resolve("gone.service");
        Files.writeString(
                gone,
                Files.readString(units.resolve("paperbark.service"))
                        .replace("ExecStart=\"", "ExecStart=\"/gone"));
        Outside.Result refused =
                Outside.run(folder, "systemd-analyze", "verify", "--man=no", gone.toString());
        assertThat(refused.err()).as("a program that is not there").contains("gone");
    }

    @Test
    void theTimerLooksOnWorkingDaysOnly() {
        assertThat(Recipes.timer()).contains("OnCalendar=Mon..Fri 07..18:00/5");
    }

    // The rules of the document type of property lists 1.0, from memory.
    @Test
    void theLaunchAgentIsAPropertyListThatHoldsTheWordsAsTheyAre() throws Exception {
        Path program = program(0);
        Map<String, String> texts = starters(Platform.MAC, program).texts();
        Element dict = only(parsed(texts.get("schedule/paperbark.office.plist")), "dict");

        List<Element> entries = children(dict);
        assertThat(entries.size() % 2).as("a value for each key").isZero();
        for (int i = 0; i < entries.size(); i += 2) {
            assertThat(entries.get(i).getTagName()).isEqualTo("key");
            assertThat(entries.get(i + 1).getTagName())
                    .isIn("string", "array", "dict", "true", "false", "integer");
        }
        Element array = (Element) dict.getElementsByTagName("array").item(0);
        assertThat(children(array).stream().map(Element::getTextContent))
                .containsExactly(program.toString(), "watch", office().toString());
    }

    // The elements of the Task Scheduler schema 1.2, from memory.
    @Test
    void theWindowsTaskRunsTheLauncherAtLogonWithTheFolderInQuotes() throws Exception {
        StartWords words =
                new StartWords(
                        List.of("C:\\Programme & mehr\\paperbark.cmd"),
                        "C:\\Büro für 100%\\office");
        Element task = parsed(Recipes.task(words));

        assertThat(task.getTagName()).isEqualTo("Task");
        assertThat(task.getNamespaceURI())
                .isEqualTo("http://schemas.microsoft.com/windows/2004/02/mit/task");
        assertThat(children(task).stream().map(Element::getTagName))
                .containsExactly(
                        "RegistrationInfo", "Triggers", "Principals", "Settings", "Actions");
        assertThat(only(task, "Command").getTextContent())
                .isEqualTo("C:\\Programme & mehr\\paperbark.cmd");
        assertThat(only(task, "Arguments").getTextContent())
                .isEqualTo("watch \"C:\\Büro für 100%\\office\"");
        assertThat(only(task, "Actions").getAttribute("Context"))
                .isEqualTo(only(task, "Principal").getAttribute("id"));
    }

    @Test
    void windowsCommandFilesHaveItsLineEndsAndDoublePercentSigns() throws IOException {
        new Starters(office(), Platform.WINDOWS, List.of("C:\\100% ü\\paperbark.cmd")).complete();
        byte[] bytes = Files.readAllBytes(office().resolve("start.cmd"));
        String text = new String(bytes, StandardCharsets.UTF_8);

        assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
        assertThat(text)
                .startsWith("@echo off\r\n")
                .contains("call \"C:\\100%% ü\\paperbark.cmd\" watch --open \"%~dp0.\"\r\n")
                .contains("exit /b %ENDED%\r\n");
        assertThat(text.indexOf("chcp 65001")).isLessThan(text.indexOf('ü'));
    }

    private static Element parsed(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        DocumentBuilder builder = factory.newDocumentBuilder();
        // The document type lies on a server; nothing is fetched.
        builder.setEntityResolver((name, place) -> new InputSource(new StringReader("")));
        Document document =
                builder.parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
        return document.getDocumentElement();
    }

    private static Element only(Element in, String name) {
        return (Element) in.getElementsByTagName(name).item(0);
    }

    private static List<Element> children(Element of) {
        List<Element> children = new ArrayList<>();
        for (Node n = of.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }
}
