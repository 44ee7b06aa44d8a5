package paperbark.office;

/** The kind of system that an office folder is made on; it decides how the program is started. */
public enum Platform {
    /** With systemd to start programs, as most have it. */
    LINUX,
    /** With launchd. */
    MAC,
    /** With the Task Scheduler. */
    WINDOWS;

    /** The platform of a Java system property {@code os.name}; any other one is like Linux. */
    public static Platform of(String name) {
        if (name.startsWith("Windows")) {
            return WINDOWS;
        }
        return name.startsWith("Mac") ? MAC : LINUX;
    }
}
