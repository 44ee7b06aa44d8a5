package paperbark.office;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import paperbark.output.LetterView;
import paperbark.output.index.BundlePage;
import paperbark.output.table.SafeCsv;

/** The list that covers the papers of a claim: what goes with it and what does not. */
record CoveringList(LetterView letter) {
    private static final List<String> HEADINGS =
            List.of(
                    "Claim",
                    "Job",
                    "Buyer",
                    "Scheme",
                    "Certificates",
                    "Expected",
                    "To owner",
                    "Installed on",
                    "To be created by",
                    "Site",
                    "What",
                    "File",
                    "State");

    /** As a page of its own. */
    String page() {
        return BundlePage.of(letter);
    }

    /** As a table, a row a file; text in it cannot run as a formula. */
    byte[] csv() {
        List<List<String>> rows = new ArrayList<>();
        letter.enclosed().forEach(e -> rows.add(row(e.what(), e.file(), e.state())));
        letter.apart().forEach(a -> rows.add(row(a.what(), "", "not enclosed: " + a.why())));
        return SafeCsv.of(HEADINGS, rows);
    }

    private List<String> row(String what, String file, String state) {
        LetterView.OfClaim claim = letter.claim().orElseThrow();
        LetterView.OfJob job = letter.jobs().get(0);
        return SafeCsv.cells(
                Stream.of(
                                claim.name(),
                                job.job(),
                                letter.to(),
                                claim.scheme(),
                                String.valueOf(claim.certificates()),
                                number(claim.expected()),
                                number(claim.toOwner()),
                                job.installedOn(),
                                claim.lodgeBy(),
                                job.site(),
                                what,
                                file,
                                state)
                        .toList());
    }

    /** An amount as a plain number of dollars. */
    private static String number(String amount) {
        return amount.replaceAll("[$,]", "");
    }
}
