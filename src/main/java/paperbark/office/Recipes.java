package paperbark.office;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;

/** Files that let a computer start the program by itself, with real paths in them. */
final class Recipes {
    // These need a person; to try again at once would only fill a log.
    private static final String FOR_A_PERSON = "2 20 21 23";

    private Recipes() {}

    /** A systemd service that attends the folder for good. Source: systemd.service(5). */
    static String service(StartWords words) {
        return """
                # Attends the office folder for good.
                [Unit]
                Description=Paperbark attends an office folder

                [Service]
                ExecStart=%s
                SuccessExitStatus=143
                Restart=on-failure
                RestartSec=60
                RestartPreventExitStatus=%s

                [Install]
                WantedBy=default.target
                """
                .formatted(StartWords.unit(words.with("watch", words.office())), FOR_A_PERSON);
    }

    /** A systemd service that takes what is in the intake and ends; a timer starts it. */
    static String look(StartWords words) {
        return """
                # Takes what is in the intake and ends; started by paperbark-look.timer.
                [Unit]
                Description=Paperbark looks into an office folder

                [Service]
                Type=oneshot
                ExecStart=%s
                SuccessExitStatus=10 11 12 20
                """
                .formatted(StartWords.unit(words.with("watch", "--once", words.office())));
    }

    /** Its timer. Source: systemd.timer(5). */
    static String timer() {
        return """
                # Every five minutes of the working day.
                [Unit]
                Description=Paperbark looks into an office folder every five minutes

                [Timer]
                OnCalendar=Mon..Fri 07..18:00/5
                Unit=paperbark-look.service

                [Install]
                WantedBy=timers.target
                """;
    }

    /**
     * A launchd agent: started at logon, and again when it failed. Source: the keys of
     * launchd.plist(5), from memory.
     */
    static String launchAgent(StartWords words) {
        return """
                <?xml version="1.0" encoding="UTF-8"?>
                <!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
                <plist version="1.0">
                <dict>
                    <key>Label</key>
                    <string>paperbark.office</string>
                    <key>ProgramArguments</key>
                    <array>
                %s
                    </array>
                    <key>RunAtLoad</key>
                    <true/>
                    <key>KeepAlive</key>
                    <dict>
                        <key>SuccessfulExit</key>
                        <false/>
                    </dict>
                    <key>ThrottleInterval</key>
                    <integer>60</integer>
                </dict>
                </plist>
                """
                .formatted(
                        words.with("watch", words.office()).stream()
                                .map(w -> "        <string>" + StartWords.xml(w) + "</string>")
                                .collect(Collectors.joining("\n")));
    }

    /**
     * A task of the Windows Task Scheduler: started at logon. Source: the Task Scheduler schema
     * 1.2, from memory.
     */
    static String task(StartWords words) {
        List<String> all = words.with("watch", words.office());
        return """
                <?xml version="1.0" encoding="UTF-8"?>
                <Task version="1.2" xmlns="http://schemas.microsoft.com/windows/2004/02/mit/task">
                  <RegistrationInfo>
                    <Description>Paperbark attends an office folder.</Description>
                  </RegistrationInfo>
                  <Triggers>
                    <LogonTrigger>
                      <Enabled>true</Enabled>
                    </LogonTrigger>
                  </Triggers>
                  <Principals>
                    <Principal id="Author">
                      <LogonType>InteractiveToken</LogonType>
                      <RunLevel>LeastPrivilege</RunLevel>
                    </Principal>
                  </Principals>
                  <Settings>
                    <MultipleInstancesPolicy>IgnoreNew</MultipleInstancesPolicy>
                    <DisallowStartIfOnBatteries>false</DisallowStartIfOnBatteries>
                    <StopIfGoingOnBatteries>false</StopIfGoingOnBatteries>
                    <ExecutionTimeLimit>PT0S</ExecutionTimeLimit>
                  </Settings>
                  <Actions Context="Author">
                    <Exec>
                      <Command>%s</Command>
                      <Arguments>%s</Arguments>
                    </Exec>
                  </Actions>
                </Task>
                """
                .formatted(
                        StartWords.xml(all.get(0)),
                        StartWords.xml(
                                all.subList(1, all.size()).stream()
                                        .map(w -> w.matches("[\\w-]+") ? w : '"' + w + '"')
                                        .collect(Collectors.joining(" "))));
    }

    /** What to do with them, in a few lines. */
    static String howTo(Platform platform, Path schedule) {
        return switch (platform) {
            case WINDOWS -> onWindows(schedule);
            case MAC -> onMac(schedule);
            case LINUX -> onLinux(schedule);
        };
    }

    private static String onLinux(Path schedule) {
        return """
                LET THE COMPUTER ATTEND THE OFFICE FOLDER

                First:

                  mkdir -p ~/.config/systemd/user
                  cp %1$s/paperbark* ~/.config/systemd/user/
                  systemctl --user daemon-reload

                Then either attend it for good, from logon on:

                  systemctl --user enable --now paperbark.service

                or only look every five minutes of the working day:

                  systemctl --user enable --now paperbark-look.timer

                Both go on without anybody logged on once "loginctl enable-linger" was said.
                To end it: the same with "disable" in the place of "enable".

                """
                .formatted(StartWords.shell(List.of(schedule.toString())));
    }

    private static String onMac(Path schedule) {
        return """
                LET THE COMPUTER ATTEND THE OFFICE FOLDER

                From the next logon on:

                  cp %s ~/Library/LaunchAgents/

                To begin at once: launchctl load ~/Library/LaunchAgents/paperbark.office.plist
                To end it: launchctl unload the same file, and delete it there.

                """
                .formatted(
                        StartWords.shell(
                                List.of(schedule.resolve("paperbark.office.plist").toString())));
    }

    private static String onWindows(Path schedule) {
        return """
                LET THE COMPUTER ATTEND THE OFFICE FOLDER

                From the next logon on; type this into a command window:

                  schtasks /create /tn Paperbark /xml "%s"

                To begin at once: schtasks /run /tn Paperbark
                To end it: stop.cmd in the office folder; for good: schtasks /delete /tn Paperbark

                """
                .formatted(schedule.resolve("paperbark-task.xml"));
    }
}
