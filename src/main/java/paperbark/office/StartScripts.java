package paperbark.office;

import java.nio.file.Path;
import java.util.List;

/** What a double-click in the office folder runs. */
final class StartScripts {
    private StartScripts() {}

    /** For Linux and macOS. A window that holds a message stays open until it was read. */
    static String start(StartWords words) {
        return """
                #!/bin/sh
                # Attends this office folder and opens status.html. "stop" in this folder ends it, and so does closing this window.
                office=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 22
                %s
                %s watch --open "$office"
                ended=$?
                case $ended in
                    0 | 20 | 130 | 143) exit "$ended" ;;
                esac
                printf 'It ended, for the reason above. Press Enter to close this window. '
                read -r _
                exit "$ended"
                """
                .formatted(isThere(words), StartWords.shell(words.program()));
    }

    /** For Linux and macOS. */
    static String stop(StartWords words) {
        return """
                #!/bin/sh
                # Ends the program that attends this office folder; a register that it works on is finished first.
                office=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 22
                %s
                %s stop "$office"
                ended=$?
                sleep 3
                exit "$ended"
                """
                .formatted(isThere(words), StartWords.shell(words.program()));
    }

    private static String isThere(StartWords words) {
        return """
                if [ ! -x %s ]; then
                    echo "Paperbark is no longer where it was. Run setup again where it is now; that mends this file."
                    printf 'Press Enter to close this window. '
                    read -r _
                    exit 23
                fi"""
                .formatted(StartWords.shell(words.program().subList(0, 1)));
    }

    /** For Linux's desktops, which run a script in a window only by such an entry. */
    static String entry(String what, Path script) {
        return """
                [Desktop Entry]
                Type=Application
                Version=1.5
                Name=%s Paperbark
                Comment=%s
                Exec=%s
                Terminal=true
                Categories=Office;
                """
                .formatted(
                        what,
                        what.equals("Start")
                                ? "Attends this office folder and opens its status page"
                                : "Ends the program that attends this office folder",
                        StartWords.entry(List.of(script.toString())));
    }

    /** For Windows. The window's code page is changed, since paths may hold any letter. */
    static String startOnWindows(StartWords words) {
        return """
                @echo off
                rem Attends this office folder and opens status.html. "stop" in this folder ends it, and so does closing this window.
                setlocal EnableExtensions DisableDelayedExpansion
                chcp 65001 >nul
                title Paperbark
                %s
                call %s watch --open "%%~dp0."
                set "ENDED=%%ERRORLEVEL%%"
                if not "%%ENDED%%"=="0" if not "%%ENDED%%"=="20" pause
                exit /b %%ENDED%%
                """
                .formatted(isThereOnWindows(words), StartWords.command(words.program()));
    }

    /** For Windows. */
    static String stopOnWindows(StartWords words) {
        return """
                @echo off
                rem Ends the program that attends this office folder; a register that it works on is finished first.
                setlocal EnableExtensions DisableDelayedExpansion
                chcp 65001 >nul
                %s
                call %s stop "%%~dp0."
                set "ENDED=%%ERRORLEVEL%%"
                timeout /t 3 >nul
                exit /b %%ENDED%%
                """
                .formatted(isThereOnWindows(words), StartWords.command(words.program()));
    }

    private static String isThereOnWindows(StartWords words) {
        return """
                if not exist %s (
                    echo Paperbark is no longer where it was. Run setup again where it is now; that mends this file.
                    pause
                    exit /b 23
                )"""
                .formatted(StartWords.command(words.program().subList(0, 1)));
    }
}
