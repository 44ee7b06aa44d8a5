package paperbark.output.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The markup of a paper taken apart: its tags, and its words apart from them. Papers with the same
 * tags differ in words alone.
 *
 * @param tags all but the words; it tells where words stand and which have space around them
 * @param words the text between tags that is more than space, in order, without references
 * @param markup the whole
 */
record TagsAndWords(String tags, List<String> words, String markup) {
    private static final char WORDS = '\1';
    private static final char SPACE = '\2';
    private static final String ENDS_COMMENT = "-->";
    private static final Map<String, String> NAMED =
            Map.of("lt", "<", "gt", ">", "amp", "&", "quot", "\"", "apos", "'");

    /** Takes markup apart; empty where it has more than elements, comments and text. */
    static Optional<TagsAndWords> of(String markup) {
        StringBuilder tags = new StringBuilder(markup.length());
        List<String> words = new ArrayList<>();
        int at = 0;
        while (at < markup.length()) {
            boolean tag = markup.charAt(at) == '<';
            int end = tag ? endOfTag(markup, at) : markup.indexOf('<', at);
            if (end < 0 && tag) {
                return Optional.empty();
            }
            String part = markup.substring(at, end < 0 ? markup.length() : end);
            if (tag || part.isBlank()) {
                tags.append(part);
            } else if (!add(part, tags, words)) {
                return Optional.empty();
            }
            at += part.length();
        }
        return Optional.of(new TagsAndWords(tags.toString(), List.copyOf(words), markup));
    }

    /** Where a tag or comment ends; negative where it does not, or is neither. */
    private static int endOfTag(String markup, int from) {
        if (markup.startsWith("<!--", from)) {
            int end = markup.indexOf(ENDS_COMMENT, from + 4);
            return end < 0 ? end : end + ENDS_COMMENT.length();
        }
        char quote = 0;
        char first = from + 1 < markup.length() ? markup.charAt(from + 1) : '!';
        boolean element = first != '!' && first != '?';
        for (int i = from; element && i < markup.length(); i++) {
            char c = markup.charAt(i);
            if (quote != 0) {
                quote = c == quote ? 0 : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == '>') {
                return i + 1;
            }
        }
        return -1;
    }

    private static boolean add(String part, StringBuilder tags, List<String> words) {
        Optional<String> said = said(part);
        said.ifPresent(
                text -> {
                    tags.append(isSpace(text.charAt(0)) ? SPACE : WORDS);
                    tags.append(isSpace(text.charAt(text.length() - 1)) ? SPACE : WORDS);
                    words.add(text);
                });
        return said.isPresent();
    }

    /** Space as a layout collapses it. */
    private static boolean isSpace(char letter) {
        return letter == ' ' || letter == '\n' || letter == '\t' || letter == '\r';
    }

    /** A text with what its references stand for; empty where one is not known. */
    private static Optional<String> said(String text) {
        int at = text.indexOf('&');
        if (at < 0) {
            return Optional.of(text.replace("\r\n", "\n").replace('\r', '\n'));
        }
        StringBuilder said = new StringBuilder(text.length());
        int from = 0;
        for (; at >= 0; at = text.indexOf('&', from)) {
            int end = text.indexOf(';', at);
            Optional<String> letter =
                    end < 0 ? Optional.empty() : letter(text.substring(at + 1, end));
            if (letter.isEmpty()) {
                return Optional.empty();
            }
            said.append(text, from, at).append(letter.get());
            from = end + 1;
        }
        return Optional.of(said.append(text.substring(from)).toString());
    }

    private static Optional<String> letter(String name) {
        if (!name.startsWith("#")) {
            return Optional.ofNullable(NAMED.get(name));
        }
        try {
            boolean hex = name.startsWith("#x");
            int letter = Integer.parseInt(name.substring(hex ? 2 : 1), hex ? 16 : 10);
            // What space is written as a reference is not taken for space by every reader.
            return letter > ' ' && Character.isValidCodePoint(letter)
                    ? Optional.of(Character.toString(letter))
                    : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** A word list's text as a layout has it: runs of space as one. */
    static String collapsed(String text) {
        StringBuilder out = new StringBuilder(text.length());
        boolean space = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (!isSpace(c)) {
                out.append(c);
            } else if (!space) {
                out.append(' ');
            }
            space = isSpace(c);
        }
        return out.toString();
    }
}
