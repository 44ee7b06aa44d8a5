package paperbark.office;

import jakarta.mail.BodyPart;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * A draft as a mail library reads it.
 *
 * @param to recipients
 * @param from senders
 * @param subject decoded
 * @param unsent what says that it opens to be edited
 * @param text the page without tags
 * @param files what is attached, in order
 */
record Drafts(
        List<String> to,
        List<String> from,
        String subject,
        String unsent,
        String text,
        Map<String, byte[]> files) {

    /** Every draft of an office, by its path below {@code send}. */
    static SortedMap<String, Drafts> of(Office office) throws IOException {
        SortedMap<String, Drafts> all = new TreeMap<>();
        if (Files.isDirectory(office.send())) {
            try (Stream<Path> files = Files.walk(office.send())) {
                for (Path file : files.filter(f -> f.toString().endsWith(".eml")).toList()) {
                    all.put(
                            office.send().relativize(file).toString(),
                            read(Files.readAllBytes(file)));
                }
            }
        }
        return all;
    }

    static Drafts read(byte[] eml) throws IOException {
        try {
            MimeMessage message =
                    new MimeMessage(
                            Session.getInstance(new Properties()), new ByteArrayInputStream(eml));
            MimeMultipart parts = (MimeMultipart) message.getContent();
            Map<String, byte[]> files = new LinkedHashMap<>();
            for (int i = 1; i < parts.getCount(); i++) {
                BodyPart part = parts.getBodyPart(i);
                files.put(part.getFileName(), part.getInputStream().readAllBytes());
            }
            return new Drafts(
                    strings(message.getRecipients(Message.RecipientType.TO)),
                    strings(message.getFrom()),
                    message.getSubject(),
                    message.getHeader("X-Unsent", ","),
                    text((String) parts.getBodyPart(0).getContent()),
                    files);
        } catch (MessagingException e) {
            throw new IOException(e);
        }
    }

    private static List<String> strings(Object[] addresses) {
        return addresses == null
                ? List.of()
                : Arrays.stream(addresses).map(String::valueOf).toList();
    }

    /** Everything that it says, its files included, without spaces and hyphens. */
    String all() throws IOException {
        StringBuilder all = new StringBuilder(subject + text);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            all.append(file.getKey());
            all.append(
                    file.getKey().endsWith(".pdf")
                            ? pdf(file.getValue())
                            : new String(file.getValue(), StandardCharsets.UTF_8));
        }
        return all.toString().replaceAll("[\\s-]+", "");
    }

    static String pdf(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    static String text(String html) {
        return html.replaceAll("(?s)<(style|title)>.*?</\\1>", " ")
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ")
                .strip();
    }
}
