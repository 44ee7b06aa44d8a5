package paperbark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import paperbark.finding.Finding;
import paperbark.office.FirmOffice;
import paperbark.office.NewFirm;

/**
 * Asks a person who their firm is, a question at a time. An answer that cannot be right is asked
 * for again, and an empty one leaves the fact for later.
 */
final class FirmQuestions {
    /**
     * A question about the firm.
     *
     * @param fact its name in the firm's table
     * @param asked the question
     * @param again what is said of an answer that cannot be; {@code %s} is the reason
     */
    private record Question(String fact, String asked, String again) {}

    private static final List<Question> QUESTIONS =
            List.of(
                    new Question("name", "Legal name of the firm", "%s"),
                    new Question(
                            "abn",
                            "Its ABN, 11 digits",
                            "%s Compare it with one of your invoices or the Business Register."),
                    new Question(
                            "acn",
                            "Its ACN, if it is a company",
                            "%s Compare it with the company's papers."),
                    new Question(
                            "gst registered", "Registered for GST, yes or no", "Type yes or no."),
                    new Question("street", "Its street and number", "%s"),
                    new Question("suburb", "Suburb", "%s"),
                    new Question(
                            "state",
                            "State, such as VIC",
                            "%s Type NSW, ACT, VIC, QLD, SA, WA, TAS or NT."),
                    new Question("postcode", "Postcode", "A postcode has four digits."),
                    new Question(
                            "phone",
                            "Office telephone",
                            "%s Type it with its area code, such as 03 5550 1234."),
                    new Question(
                            "email",
                            "Office e-mail",
                            "That is no e-mail address; one looks like name@example.com."),
                    new Question("account name", "Name of the account that buyers pay to", "%s"),
                    new Question(
                            "bsb",
                            "BSB of that account",
                            "A BSB has six digits, such as 000-000. It is on the account's statement."),
                    new Question(
                            "account",
                            "Number of that account",
                            "An account number has at most nine digits. Leave the BSB out."));

    private final UnaryOperator<String> ask;
    private final Consumer<String> tell;
    private final Path folder;

    /**
     * Questions to somebody.
     *
     * @param ask takes a question and gives the answer; {@code null} when there will be no more
     * @param tell takes a line for people
     * @param folder where a file is looked for that is named without one
     */
    FirmQuestions(UnaryOperator<String> ask, Consumer<String> tell, Path folder) {
        this.ask = ask;
        this.tell = tell;
        this.folder = folder;
    }

    /** The firm; empty where the person wants the sample firm's office instead. */
    Optional<FirmOffice> asked() {
        tell.accept("Who is this office for? Enter alone leaves a question for later;");
        tell.accept("without a name it becomes the office of a made-up sample firm.");
        Map<String, String> facts = new LinkedHashMap<>();
        for (Question question : QUESTIONS) {
            String fact = question.fact();
            boolean needed = fact.equals("abn");
            Optional<String> answer =
                    answer(question.asked(), needed, text -> trouble(facts, question, text));
            if (answer.isEmpty() && (fact.equals("name") || needed)) {
                return Optional.empty();
            }
            answer.ifPresent(text -> facts.put(fact, text));
        }
        List<Map<String, String>> licences = licences();
        List<String> makers = names("A maker whose heaters you put in", NewFirm.Named.MAKER);
        List<String> buyers = names("A buyer of your certificates", NewFirm.Named.BUYER);
        return Optional.of(new FirmOffice(new NewFirm(facts, licences, makers, buyers), logo()));
    }

    private static Optional<String> trouble(
            Map<String, String> before, Question question, String text) {
        Map<String, String> facts = new LinkedHashMap<>(before);
        facts.put(question.fact(), text);
        // A company's number is compared with the ABN, so that is needed beside it.
        Optional<Finding> finding =
                facts.containsKey("abn")
                        ? new NewFirm(facts, List.of(), List.of(), List.of())
                                .troubles().stream().findFirst()
                        : NewFirm.trouble(question.fact(), text);
        return finding.map(f -> question.again().formatted(f.fact()));
    }

    private List<Map<String, String>> licences() {
        List<Map<String, String>> licences = new ArrayList<>();
        while (true) {
            Optional<String> name =
                    answer("A plumber or electrician", false, NewFirm.Named.PERSON::sample);
            if (name.isEmpty()) {
                return licences;
            }
            Map<String, String> licence = new LinkedHashMap<>(Map.of("person", name.get()));
            Map<String, String> base = new LinkedHashMap<>(licence);
            base.putAll(Map.of("trade", "plumbing", "licence", "1", "state", "VIC"));
            Function<Finding, String> trade = f -> "Type plumber or electrician.";
            Function<Finding, String> any = f -> f.fact() + " " + f.remedy();
            add(licence, base, "trade", "  plumber or electrician", trade);
            add(licence, base, "licence", "  number of that licence", any);
            add(licence, base, "state", "  state of that licence", any);
            if (licence.size() == base.size()) {
                licences.add(licence);
            } else {
                tell.accept("  A licence needs all of it; " + name.get() + " is left for later.");
            }
        }
    }

    private void add(
            Map<String, String> licence,
            Map<String, String> base,
            String column,
            String question,
            Function<Finding, String> again) {
        answer(
                        question,
                        false,
                        text -> {
                            Map<String, String> tried = new LinkedHashMap<>(base);
                            tried.put(column, text);
                            return NewFirm.trouble(tried).map(again);
                        })
                .ifPresent(text -> licence.put(column, text));
    }

    private List<String> names(String question, NewFirm.Named named) {
        List<String> names = new ArrayList<>();
        for (Optional<String> name = answer(question, false, named::sample);
                name.isPresent();
                name = answer("  another", false, named::sample)) {
            names.add(name.get());
        }
        return names;
    }

    private Optional<Path> logo() {
        return answer(
                        "A picture for the head of every page, a .png or .svg file",
                        false,
                        text -> FirmOffice.pictureTrouble(file(text)))
                .map(this::file);
    }

    /** A file as people type or drag it: quotes around it are not part of its name. */
    private Path file(String text) {
        return folder.resolve(text.replaceAll("^([\"'])(.*)\\1$", "$2"));
    }

    private Optional<String> answer(
            String question, boolean needed, Function<String, Optional<String>> trouble) {
        while (true) {
            String answer = ask.apply(question + ": ");
            if (answer == null || (answer.isBlank() && !needed)) {
                return Optional.empty();
            }
            Optional<String> wrong =
                    answer.isBlank()
                            ? Optional.of("This one is needed.")
                            : trouble.apply(answer.strip());
            if (wrong.isEmpty()) {
                return Optional.of(answer.strip());
            }
            tell.accept("  " + wrong.get());
        }
    }
}
