package paperbark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.office.FirmOffice;
import paperbark.office.NewFirm;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The words that say who a firm is. */
final class FirmOptions {
    private static final List<String> LICENCE = List.of("person", "trade", "licence", "state");

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--name", paramLabel = "TEXT", description = "Legal name of the firm.")
    private Optional<String> name = Optional.empty();

    @Option(
            names = "--abn",
            paramLabel = "NUMBER",
            description = "Its Australian Business Number; the check digits are tried.")
    private Optional<String> abn = Optional.empty();

    @Option(names = "--acn", paramLabel = "NUMBER", description = "A company's number.")
    private Optional<String> acn = Optional.empty();

    @Option(names = "--gst", paramLabel = "yes|no", description = "Registered for GST or not.")
    private Optional<String> gst = Optional.empty();

    @Option(names = "--street", paramLabel = "TEXT", description = "Its address: street.")
    private Optional<String> street = Optional.empty();

    @Option(names = "--suburb", paramLabel = "TEXT", description = "Its address: suburb.")
    private Optional<String> suburb = Optional.empty();

    @Option(names = "--state", paramLabel = "STATE", description = "Its address: state.")
    private Optional<String> state = Optional.empty();

    @Option(names = "--postcode", paramLabel = "NUMBER", description = "Its address: postcode.")
    private Optional<String> postcode = Optional.empty();

    @Option(names = "--phone", paramLabel = "NUMBER", description = "Office telephone.")
    private Optional<String> phone = Optional.empty();

    @Option(names = "--email", paramLabel = "TEXT", description = "Office e-mail.")
    private Optional<String> email = Optional.empty();

    @Option(
            names = "--account-name",
            paramLabel = "TEXT",
            description = "Name of the account that buyers pay to.")
    private Optional<String> accountName = Optional.empty();

    @Option(names = "--bsb", paramLabel = "NUMBER", description = "Branch of that account.")
    private Optional<String> bsb = Optional.empty();

    @Option(names = "--account", paramLabel = "NUMBER", description = "Number of that account.")
    private Optional<String> account = Optional.empty();

    @Option(
            names = "--logo",
            paramLabel = "FILE",
            description = "A .png or .svg for the head of every page.")
    private Optional<Path> logo = Optional.empty();

    @Option(
            names = "--person",
            paramLabel = "NAME;TRADE;LICENCE;STATE",
            description =
                    "Who installs, with a licence: plumbing or electrical, its number, its state. May be given more than once.")
    private List<String> people = new ArrayList<>();

    @Option(
            names = "--maker",
            paramLabel = "NAME",
            description = "Whose heaters you put in. May be given more than once.")
    private List<String> makers = new ArrayList<>();

    @Option(
            names = "--buyer",
            paramLabel = "NAME",
            description = "Who takes your certificates. May be given more than once.")
    private List<String> buyers = new ArrayList<>();

    /** Whether anything is said of a firm. */
    boolean isGiven() {
        return !facts().isEmpty()
                || logo.isPresent()
                || !people.isEmpty()
                || !makers.isEmpty()
                || !buyers.isEmpty();
    }

    /** The firm; what is wrong with it is a wrong use of the command. */
    FirmOffice firm(Main.World world) {
        NewFirm firm = new NewFirm(facts(), licences(), makers, buyers);
        if (name.isEmpty() || abn.isEmpty()) {
            throw wrong("A firm needs --name and --abn; --sample makes the sample firm's office.");
        }
        for (Finding finding : firm.troubles()) {
            String option = firm.fact(finding).map(FirmOptions::option).orElse("");
            String where = option.isEmpty() ? finding.where() : option;
            throw wrong(where + ": " + finding.fact() + " " + finding.remedy());
        }
        firm.sampleLeft()
                .ifPresent(
                        trouble -> {
                            throw wrong(trouble);
                        });
        Optional<Path> picture = logo.map(world.directory()::resolve);
        picture.flatMap(FirmOffice::pictureTrouble)
                .ifPresent(
                        trouble -> {
                            throw wrong("--logo: " + trouble);
                        });
        return new FirmOffice(firm, picture);
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }

    private static String option(String fact) {
        return "--" + (fact.equals("gst registered") ? "gst" : fact.replace(' ', '-'));
    }

    private Map<String, String> facts() {
        Map<String, String> facts = new LinkedHashMap<>();
        name.ifPresent(t -> facts.put("name", t));
        abn.ifPresent(t -> facts.put("abn", t));
        acn.ifPresent(t -> facts.put("acn", t));
        gst.ifPresent(t -> facts.put("gst registered", t));
        street.ifPresent(t -> facts.put("street", t));
        suburb.ifPresent(t -> facts.put("suburb", t));
        state.ifPresent(t -> facts.put("state", t));
        postcode.ifPresent(t -> facts.put("postcode", t));
        phone.ifPresent(t -> facts.put("phone", t));
        email.ifPresent(t -> facts.put("email", t));
        accountName.ifPresent(t -> facts.put("account name", t));
        bsb.ifPresent(t -> facts.put("bsb", t));
        account.ifPresent(t -> facts.put("account", t));
        return facts;
    }

    private List<Map<String, String>> licences() {
        return people.stream().map(this::licence).toList();
    }

    private Map<String, String> licence(String text) {
        String[] parts = text.split(";");
        if (parts.length != LICENCE.size()) {
            throw wrong(
                    "--person takes name; trade; licence; state with semicolons between, not \""
                            + text
                            + "\".");
        }
        Map<String, String> licence = new LinkedHashMap<>();
        for (int i = 0; i < parts.length; i++) {
            licence.put(LICENCE.get(i), parts[i].strip());
        }
        return licence;
    }
}
