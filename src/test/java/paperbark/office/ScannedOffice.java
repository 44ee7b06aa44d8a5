package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import paperbark.batch.PageMap;
import paperbark.cli.Program;
import paperbark.ledger.Ledger;
import paperbark.ledger.PaperState;
import paperbark.ledger.ScanBook;
import paperbark.scan.Scanned;

/** An office that printed two jobs, and what tests do there with scanned pages. */
final class ScannedOffice {
    final Path folder;
    final Office office;
    final Path batch;

    ScannedOffice(Path folder) throws IOException {
        this.folder = folder;
        office = Offices.make(folder.resolve("office"));
        batch = print("week.csv", Offices.register(1, 2));
    }

    Path print(String name, String register) throws IOException {
        return print(name, register, 0);
    }

    Path print(String name, String register, int exitCode) throws IOException {
        Files.writeString(office.intake().resolve(name), register);
        assertThat(watch().exitCode()).isEqualTo(exitCode);
        return office.packs().resolve("2026-11-23-" + name.replace(".csv", ""));
    }

    Program.Run watch() {
        return Program.run(folder, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    Program.Run scans() {
        return Program.run(folder, "scans", office.root().toString());
    }

    static PageMap.PaperSpan paper(Path batch, String job, String kind) throws IOException {
        return PageMap.in(batch).orElseThrow().of(job).orElseThrow().papers().stream()
                .filter(p -> p.kind().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    static Path pack(Path batch, String job) {
        return batch.resolve("packs/" + job + ".pdf");
    }

    static void add(Scanned pile, Path batch, String job, String kind) throws IOException {
        PageMap.PaperSpan paper = paper(batch, job, kind);
        for (int i = 0; i < paper.pages(); i++) {
            pile.page(pack(batch, job), paper.first() + i, paper.boxes(), true, false);
        }
    }

    Map<String, PaperState> states(String job) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            return new ScanBook(ledger)
                    .papers(job).stream()
                            .collect(Collectors.toMap(p -> p.kind() + " " + p.version(), p -> p));
        }
    }

    List<String> signed() throws IOException {
        try (Stream<Path> all = Files.walk(office.signed())) {
            return all.filter(Files::isRegularFile)
                    .map(f -> office.signed().relativize(f).toString())
                    .sorted()
                    .toList();
        }
    }

    static int pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return document.getNumberOfPages();
        }
    }
}
