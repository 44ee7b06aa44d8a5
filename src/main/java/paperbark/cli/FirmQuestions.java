package paperbark.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import paperbark.finding.Finding;
import paperbark.office.NewFirm;

/**
 * Asks a person who their firm is, a question at a time. An answer that cannot be right is asked
 * for again, and an empty one leaves the fact for later.
 */
final class FirmQuestions {
    /** Facts in the order in which they are asked for, with what is asked. */
    private static final Map<String, String> QUESTIONS = questions();

    private final UnaryOperator<String> ask;
    private final Consumer<String> tell;

    /**
     * Questions to somebody.
     *
     * @param ask takes a question and gives the answer; {@code null} when there will be no more
     * @param tell takes a line for people
     */
    FirmQuestions(UnaryOperator<String> ask, Consumer<String> tell) {
        this.ask = ask;
        this.tell = tell;
    }

    private static Map<String, String> questions() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("name", "Legal name of the firm");
        all.put("abn", "Its ABN, 11 digits");
        all.put("acn", "Its ACN, if it is a company");
        all.put("gst registered", "Registered for GST, yes or no");
        all.put("street", "Its street and number");
        all.put("suburb", "Suburb");
        all.put("state", "State, such as VIC");
        all.put("postcode", "Postcode");
        all.put("phone", "Office telephone");
        all.put("email", "Office e-mail");
        all.put("account name", "Name of the account that buyers pay to");
        all.put("bsb", "BSB of that account");
        all.put("account", "Number of that account");
        return all;
    }

    /** The firm; empty where the person wants the sample firm's office instead. */
    Optional<NewFirm> asked() {
        tell.accept("Who is this office for? Enter alone leaves a question for later;");
        tell.accept("without a name it becomes the office of a made-up sample firm.");
        Map<String, String> facts = new LinkedHashMap<>();
        for (Map.Entry<String, String> question : QUESTIONS.entrySet()) {
            String fact = question.getKey();
            boolean needed = fact.equals("abn");
            Optional<String> answer =
                    answer(question.getValue(), needed, text -> trouble(facts, fact, text));
            if (answer.isEmpty() && (fact.equals("name") || needed)) {
                return Optional.empty();
            }
            answer.ifPresent(text -> facts.put(fact, text));
        }
        List<Map<String, String>> licences = licences();
        List<String> makers = names("A maker whose heaters you put in");
        return Optional.of(
                new NewFirm(facts, licences, makers, names("A buyer of your certificates")));
    }

    private static Optional<Finding> trouble(Map<String, String> before, String fact, String text) {
        Map<String, String> facts = new LinkedHashMap<>(before);
        facts.put(fact, text);
        // A company's number is compared with the ABN, so that is needed beside it.
        return facts.containsKey("abn")
                ? new NewFirm(facts, List.of(), List.of(), List.of())
                        .troubles().stream().findFirst()
                : NewFirm.trouble(fact, text);
    }

    private List<Map<String, String>> licences() {
        List<Map<String, String>> licences = new ArrayList<>();
        while (true) {
            Optional<String> name =
                    answer("A plumber or electrician", false, text -> Optional.empty());
            if (name.isEmpty()) {
                return licences;
            }
            Map<String, String> licence = new LinkedHashMap<>(Map.of("person", name.get()));
            Map<String, String> base = new LinkedHashMap<>(licence);
            base.putAll(Map.of("trade", "plumbing", "licence", "1", "state", "VIC"));
            add(licence, base, "trade", "  plumbing or electrical");
            add(licence, base, "licence", "  number of that licence");
            add(licence, base, "state", "  state of that licence");
            if (licence.size() == base.size()) {
                licences.add(licence);
            } else {
                tell.accept("  A licence needs all of it; " + name.get() + " is left for later.");
            }
        }
    }

    private void add(
            Map<String, String> licence, Map<String, String> base, String column, String question) {
        answer(
                        question,
                        false,
                        text -> {
                            Map<String, String> tried = new LinkedHashMap<>(base);
                            tried.put(column, text.toLowerCase(Locale.ROOT));
                            return NewFirm.trouble(tried);
                        })
                .ifPresent(text -> licence.put(column, text));
    }

    private List<String> names(String question) {
        List<String> names = new ArrayList<>();
        for (Optional<String> name = answer(question, false, text -> Optional.empty());
                name.isPresent();
                name = answer("  another", false, text -> Optional.empty())) {
            names.add(name.get());
        }
        return names;
    }

    private Optional<String> answer(
            String question, boolean needed, Function<String, Optional<Finding>> trouble) {
        while (true) {
            String answer = ask.apply(question + ": ");
            if (answer == null || (answer.isBlank() && !needed)) {
                return Optional.empty();
            }
            Optional<Finding> wrong =
                    answer.isBlank() ? Optional.empty() : trouble.apply(answer.strip());
            if (answer.isBlank()) {
                tell.accept("  This one is needed.");
            } else if (wrong.isEmpty()) {
                return Optional.of(answer.strip());
            } else {
                tell.accept("  " + wrong.get().fact() + " " + wrong.get().remedy());
            }
        }
    }
}
