package paperbark.cli;

import java.awt.AWTError;
import java.awt.Desktop;
import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;

/** The browser of whoever sits at the computer, if somebody does. */
final class Browser {
    private Browser() {}

    /** Opens a page, or says its address where there is no desktop. */
    static void open(Path page, PrintWriter out) {
        URI address = page.toUri();
        out.println(isOpened(address) ? page + " is open in your browser." : "Open " + address);
        out.flush();
    }

    private static boolean isOpened(URI address) {
        try {
            if (GraphicsEnvironment.isHeadless()
                    || !Desktop.isDesktopSupported()
                    || !Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
                return false;
            }
            Desktop.getDesktop().browse(address);
            return true;
        } catch (IOException | RuntimeException | LinkageError | AWTError none) {
            // A Java without the desktop's libraries, a display that is gone, no browser.
            return false;
        }
    }
}
