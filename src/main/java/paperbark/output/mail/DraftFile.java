package paperbark.output.mail;

import jakarta.activation.DataHandler;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.util.ByteArrayDataSource;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Date;
import java.util.Properties;
import org.apache.commons.codec.digest.DigestUtils;

/** Writes a draft as a file (RFC 5322 and MIME). */
public final class DraftFile {
    private static final int NAME_LETTERS = 32;

    private DraftFile() {}

    /** A message whose name follows from what it says. */
    private static final class NamedMessage extends MimeMessage {
        private final String name;

        NamedMessage(String name) {
            super(Session.getInstance(new Properties()));
            this.name = name;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", "<" + name + "@draft.invalid>");
        }
    }

    /**
     * The file.
     *
     * @throws IOException when the text cannot be written as mail
     */
    public static byte[] of(Draft draft) throws IOException {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            message(draft).writeTo(out);
            return out.toByteArray();
        } catch (MessagingException e) {
            throw new IOException("the draft \"" + draft.subject() + "\" cannot be written", e);
        }
    }

    private static MimeMessage message(Draft draft) throws MessagingException {
        String all = draft.at() + draft.subject() + draft.html();
        MimeMessage message =
                new NamedMessage(DigestUtils.sha256Hex(all).substring(0, NAME_LETTERS));
        // Not a rule but what several mail programs look for: the message opens ready to be edited.
        message.setHeader("X-Unsent", "1");
        if (draft.from().isPresent()) {
            message.setFrom(new InternetAddress(draft.from().get().full()));
        }
        if (draft.to().isPresent()) {
            message.setRecipient(
                    Message.RecipientType.TO, new InternetAddress(draft.to().get().full()));
        }
        message.setSubject(draft.subject().replaceAll("[\\r\\n]+", " "), "UTF-8");
        message.setSentDate(Date.from(draft.at()));
        MimeMultipart parts = new MimeMultipart();
        MimeBodyPart text = new MimeBodyPart();
        text.setContent(draft.html(), "text/html; charset=UTF-8");
        text.setHeader("Content-Transfer-Encoding", "base64");
        parts.addBodyPart(text);
        for (Draft.Attachment file : draft.attachments()) {
            parts.addBodyPart(attached(file));
        }
        message.setContent(parts);
        message.saveChanges();
        return message;
    }

    private static MimeBodyPart attached(Draft.Attachment file) throws MessagingException {
        MimeBodyPart part = new MimeBodyPart();
        part.setDataHandler(new DataHandler(new ByteArrayDataSource(file.content(), file.type())));
        part.setFileName(file.name());
        part.setHeader("Content-Transfer-Encoding", "base64");
        return part;
    }
}
