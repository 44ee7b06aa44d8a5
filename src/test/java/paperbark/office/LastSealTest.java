package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.Ledger;
import paperbark.output.paper.Judge;

/** The ledger's last seal stands where nobody can seal it anew: on paper. */
class LastSealTest {
    private static final Pattern SEAL = Pattern.compile("entry \\d+, seal( [0-9a-f]{4}){4}");

    @TempDir private Path folder;

    private static String found(String text) {
        Matcher seal = SEAL.matcher(text);
        assertThat(seal.find()).as(text).isTrue();
        return seal.group();
    }

    @Test
    void itIsOnTheFirstPageOfAPrintRunOnTheStatusPageAndInTheExport() throws IOException {
        Office office = Offices.make(folder.resolve("office"));
        String before;
        try (Ledger ledger = Ledger.open(office.ledger())) {
            before = ledger.records().lastSeal();
        }
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1));
        Program.run(office.root(), "watch", ".", "--once", "--quiet-for", "0");
        Path run = office.packs().resolve("2026-11-23-one/print-run.pdf");
        try (PDDocument pdf = Loader.loadPDF(run.toFile())) {
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            assertThat(found(first.getText(pdf))).isEqualTo(before);
        }
        assertThat(Judge.of(Files.readAllBytes(run))).isEqualTo(Judge.Verdict.CONFORMS);
        String now = found(Files.readString(office.status()));
        assertThat(now).startsWith("entry 1, ");
        assertThat(found(Program.run(office.root(), "doctor", ".").out())).isEqualTo(now);
        assertThat(Program.run(office.root(), "export", "--out", "out").exitCode()).isZero();
        assertThat(Files.readString(office.root().resolve("out/entry.csv")))
                .contains(now.replaceFirst(".*seal ", "").replace(" ", ""));
    }
}
