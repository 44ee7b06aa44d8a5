package paperbark.office;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** A line to a database server that breaks, once, when somebody says to commit. */
final class BreakingLine implements AutoCloseable {
    /** When it breaks. */
    enum Moment {
        /** The word never arrives. */
        BEFORE,
        /** The word arrives and its answer does not. */
        AFTER
    }

    private final ServerSocket door;
    private final int server;
    private final Moment moment;
    private final ExecutorService runners = Executors.newCachedThreadPool();
    private volatile boolean sound;

    BreakingLine(int server, Moment moment) throws IOException {
        this.server = server;
        this.moment = moment;
        door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        runners.submit(this::answer);
    }

    /** Where it begins. */
    int port() {
        return door.getLocalPort();
    }

    private Void answer() throws IOException {
        while (true) {
            Socket near = door.accept();
            Socket far = new Socket(InetAddress.getLoopbackAddress(), server);
            runners.submit(() -> carry(near, far, true));
            runners.submit(() -> carry(far, near, false));
        }
    }

    private Void carry(Socket from, Socket to, boolean there) throws IOException {
        try (from;
                to) {
            byte[] bytes = new byte[1 << 16];
            boolean said = false;
            for (int n = from.getInputStream().read(bytes);
                    n >= 0;
                    n = from.getInputStream().read(bytes)) {
                String text = new String(bytes, 0, n, StandardCharsets.ISO_8859_1);
                said = !sound && text.contains("COMMIT");
                if (said && breaks(there)) {
                    sound = true;
                    return null;
                }
                to.getOutputStream().write(bytes, 0, n);
            }
            return null;
        }
    }

    /** The server's answer to the word names the word too. */
    private boolean breaks(boolean there) {
        return there == (moment == Moment.BEFORE);
    }

    @Override
    public void close() throws IOException {
        door.close();
        runners.shutdownNow();
    }
}
