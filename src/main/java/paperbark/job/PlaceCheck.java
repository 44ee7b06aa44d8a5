package paperbark.job;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.rules.Dated;
import paperbark.rules.PostcodeStateRow;
import paperbark.rules.Rulebook;
import paperbark.value.Address;
import paperbark.value.State;

/**
 * Checks the addresses of a job. The state in the register is never overwritten: some postcodes
 * cross a border.
 */
final class PlaceCheck {
    private static final Pattern POST_BOX =
            Pattern.compile(
                    "(?i)^(g\\.?p\\.?o\\.?|p\\.?o\\.?|post office|locked|private) (box|bag)\\b");

    private final Job job;
    private final Rulebook rulebook;
    private final LocalDate day;
    private final List<Finding> findings = new ArrayList<>();

    private PlaceCheck(Job job, Rulebook rulebook, LocalDate today) {
        this.job = job;
        this.rulebook = rulebook;
        this.day = job.ruleDay().orElse(today);
    }

    static List<Finding> of(Job job, Rulebook rulebook, LocalDate today) {
        PlaceCheck check = new PlaceCheck(job, rulebook, today);
        check.site();
        if (!job.owner().postal().equals(job.site().address())) {
            check.state(job.owner().postal(), Field.POSTAL_POSTCODE);
        }
        return check.findings;
    }

    private void site() {
        Address address = job.site().address();
        state(address, Field.SITE_POSTCODE);
        row(address)
                .filter(row -> !row.row().street())
                .ifPresent(
                        row ->
                                add(
                                        FindingCode.POSTCODE_NO_STREET,
                                        Field.SITE_POSTCODE,
                                        "The postcode "
                                                + address.postcode().orElseThrow()
                                                + " belongs to post office boxes.",
                                        "Type the postcode of the street where the heater stands."));
        boolean claims = job.hasClaims();
        boolean found = address.street().map(PlaceCheck::canBeFound).orElse(true);
        if (claims && !found && job.site().position().isEmpty()) {
            findings.add(
                    found(
                                    FindingCode.ADDRESS_INCOMPLETE,
                                    Field.SITE_STREET,
                                    "The site address names no street or lot number where the heater stands.",
                                    "Type the number, or describe under \""
                                            + Field.SITE_POSITION.label()
                                            + "\" how an officer finds the place.")
                            .seeing(address.street().orElse("")));
        }
    }

    private static boolean canBeFound(String street) {
        return street.matches("(?i).*([0-9]|\\b(lot|rmb|rsd)\\b).*")
                && !POST_BOX.matcher(street).find();
    }

    private void state(Address address, Field field) {
        Optional<State> said = address.state();
        row(address)
                .filter(row -> said.isPresent() && !row.row().states().contains(said.get()))
                .ifPresent(row -> findings.add(otherState(address, field, row)));
    }

    /** Only a site's postcode decides zone and number, and only far from a border is one a slip. */
    private Finding otherState(Address address, Field field, Dated<PostcodeStateRow> row) {
        List<State> states = row.row().states();
        Finding finding =
                found(
                                FindingCode.POSTCODE_OF_OTHER_STATE,
                                field,
                                "The postcode "
                                        + address.postcode().orElseThrow()
                                        + " lies in "
                                        + states.stream().map(State::name).collect(joining(" or "))
                                        + ", but the register says "
                                        + address.state().orElseThrow()
                                        + ".",
                                "Compare both with the owner's address and correct the one that is wrong.")
                        .by(row.ref());
        boolean decides = field == Field.SITE_POSTCODE && states.size() == 1;
        return decides ? finding : finding.as(Severity.CHECK);
    }

    private Optional<Dated<PostcodeStateRow>> row(Address address) {
        return address.postcode().flatMap(postcode -> rulebook.postcodeStates().on(day, postcode));
    }

    private void add(FindingCode code, Field field, String fact, String remedy) {
        findings.add(found(code, field, fact, remedy));
    }

    private Finding found(FindingCode code, Field field, String fact, String remedy) {
        return Finding.of(code, job.origin().cell(field), fact, remedy);
    }
}
