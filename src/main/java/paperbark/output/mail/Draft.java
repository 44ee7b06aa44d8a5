package paperbark.output.mail;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import paperbark.value.Email;

/**
 * An e-mail that a person may send.
 *
 * @param from whose it is, where that has an address
 * @param to who gets it; empty where no address is known
 * @param subject one line
 * @param html the text as a page
 * @param attachments what goes with it
 * @param at moment of making, for people only
 */
public record Draft(
        Optional<Email> from,
        Optional<Email> to,
        String subject,
        String html,
        List<Attachment> attachments,
        Instant at) {

    /** Keeps the list from being changed. */
    public Draft {
        attachments = List.copyOf(attachments);
    }

    /**
     * A file that goes with it.
     *
     * @param name its name
     * @param type what it is, such as {@code application/pdf}
     * @param content its bytes
     */
    public record Attachment(String name, String type, byte[] content) {}
}
