package paperbark.job;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a cell that holds several facts was read as.
 *
 * @param texts the text of each fact found, in the order in which people are shown them
 * @param doubt why the cell may mean something else; one clause
 */
record CellParts(Map<Field, String> texts, Optional<String> doubt) {

    /** Parts that are sure. */
    static CellParts sure(Map<Field, String> texts) {
        return new CellParts(texts, Optional.empty());
    }

    /** The same with a doubt, kept beside an earlier one. */
    CellParts doubted(String why) {
        return new CellParts(texts, Optional.of(doubt.map(d -> d + ", and " + why).orElse(why)));
    }

    /** In words: {@code Site street "4 Teaspoon Lane", Site suburb "Ballan"}. */
    String inWords() {
        return texts.entrySet().stream()
                .map(e -> e.getKey().label() + " \"" + e.getValue() + "\"")
                .collect(Collectors.joining(", "));
    }

    /** An ordered map without the facts that are empty. */
    static Map<Field, String> texts(Map<Field, String> found) {
        Map<Field, String> texts = new LinkedHashMap<>();
        found.forEach(
                (field, text) -> {
                    if (!text.isBlank()) {
                        texts.put(field, text.strip());
                    }
                });
        return texts;
    }
}
