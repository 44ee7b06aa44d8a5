package paperbark.sheet;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a file holds, told from its first bytes, and the name endings that promise it. */
enum FileKind {
    WORKBOOK("an Excel workbook", "xlsx"),
    OLD_WORKBOOK("an old Excel workbook", "xls"),
    TEXT("plain text", "csv", "txt", "tsv", "tab"),
    ZIP("a zip archive", "zip"),
    OLE("another Office document", "doc", "ppt", "msg"),
    PDF("a PDF document", "pdf"),
    WEB_PAGE("a web page", "html", "htm", "mht"),
    XML("an XML document", "xml"),
    RICH_TEXT("a rich-text document", "rtf"),
    PICTURE("a picture", "png", "jpg", "jpeg", "gif"),
    ARCHIVE("a packed archive", "gz", "7z", "rar"),
    OPEN_DOCUMENT("an OpenDocument file", "ods", "odt"),
    BINARY_WORKBOOK("a binary Excel workbook", "xlsb"),
    WORD("a Word document", "docx"),
    PRESENTATION("a presentation", "pptx");

    private static final byte[] BOM = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private final String words;
    private final List<String> endings;

    FileKind(String words, String... endings) {
        this.words = words;
        this.endings = List.of(endings);
    }

    /** With an article, for the middle of a sentence. */
    String words() {
        return words;
    }

    boolean isReadable() {
        return this == WORKBOOK || this == OLD_WORKBOOK || this == TEXT;
    }

    /** Whether a spreadsheet program opens it as a sheet, so that it can be saved as another. */
    boolean opensAsSheet() {
        return isReadable()
                || this == OPEN_DOCUMENT
                || this == BINARY_WORKBOOK
                || this == WEB_PAGE
                || this == XML;
    }

    /** The kind that the name's ending promises, if it is an ending that promises one. */
    static Optional<FileKind> promisedBy(String ending) {
        return Arrays.stream(values()).filter(kind -> kind.endings.contains(ending)).findFirst();
    }

    /** Zip and OLE2 containers need a second look; everything unknown is taken for text. */
    static FileKind ofFirstBytes(byte[] head) {
        String raw = new String(head, StandardCharsets.ISO_8859_1);
        if (raw.startsWith("PK\3\4") || raw.startsWith("PK\5\6")) {
            return ZIP;
        }
        if (raw.startsWith("\u00D0\u00CF\u0011\u00E0\u00A1\u00B1\u001A\u00E1")) {
            return OLE;
        }
        if (raw.startsWith("\u0089PNG") || raw.startsWith("\u00FF\u00D8\u00FF")) {
            return PICTURE;
        }
        if (raw.startsWith("GIF8")) {
            return PICTURE;
        }
        if (raw.startsWith("\u001F\u008B") || raw.startsWith("7z\u00BC\u00AF")) {
            return ARCHIVE;
        }
        return raw.startsWith("Rar!") ? ARCHIVE : ofFirstWords(head);
    }

    private static FileKind ofFirstWords(byte[] head) {
        int from = Arrays.equals(head, 0, Math.min(3, head.length), BOM, 0, 3) ? 3 : 0;
        String words =
                new String(head, from, head.length - from, StandardCharsets.ISO_8859_1)
                        .stripLeading()
                        .toLowerCase(Locale.ROOT);
        if (words.startsWith("%pdf-")) {
            return PDF;
        }
        if (words.startsWith("<!doctype html")
                || words.startsWith("<html")
                || words.startsWith("<table")
                || words.startsWith("mime-version:")) {
            return WEB_PAGE;
        }
        if (words.startsWith("<?xml")) {
            return words.contains("<html") ? WEB_PAGE : XML;
        }
        return words.startsWith("{\\rtf") ? RICH_TEXT : TEXT;
    }
}
