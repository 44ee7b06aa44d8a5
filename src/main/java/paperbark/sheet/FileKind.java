package paperbark.sheet;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.poi.poifs.filesystem.FileMagic;

/** What a file holds, told from its first bytes, and the name endings that promise it. */
enum FileKind {
    WORKBOOK("an Excel workbook", "xlsx", "xlsm"),
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
    OPEN_SHEET("an OpenDocument spreadsheet", "ods"),
    OPEN_DOCUMENT("an OpenDocument file", "odt"),
    EARLY_WORKBOOK("a workbook of an early Excel"),
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
        return this == WORKBOOK || this == OLD_WORKBOOK || this == OPEN_SHEET || this == TEXT;
    }

    /** Whether a spreadsheet program opens it as a sheet, so that it can be saved as another. */
    boolean opensAsSheet() {
        return isReadable()
                || this == EARLY_WORKBOOK
                || this == BINARY_WORKBOOK
                || this == WEB_PAGE
                || this == XML;
    }

    /** The kind that the name's ending promises, if it is an ending that promises one. */
    static Optional<FileKind> promisedBy(String ending) {
        return Arrays.stream(values()).filter(kind -> kind.endings.contains(ending)).findFirst();
    }

    /**
     * Zip and OLE2 containers need a second look; everything unknown is taken for text. Of a bitmap
     * the library knows two letters only, which a heading may begin with.
     */
    static FileKind ofFirstBytes(byte[] head) {
        String raw = new String(head, StandardCharsets.ISO_8859_1);
        return switch (FileMagic.valueOf(head)) {
            case OOXML -> ZIP;
            case OLE2 -> OLE;
            case PNG, JPEG, GIF, TIFF, EMF, WMF -> PICTURE;
            case BIFF2, BIFF3, BIFF4 -> EARLY_WORKBOOK;
            case MSWRITE, WORD2 -> OLE;
            default -> {
                if (raw.startsWith("PK\5\6")) {
                    yield ZIP;
                }
                boolean packed =
                        raw.startsWith("\u001F\u008B")
                                || raw.startsWith("7z\u00BC\u00AF")
                                || raw.startsWith("Rar!");
                yield packed ? ARCHIVE : ofFirstWords(head);
            }
        };
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
