package paperbark.scan;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.Batch;
import paperbark.batch.Request;
import paperbark.batch.SampleWeek;
import paperbark.disk.Disk;
import paperbark.office.Offices;

/**
 * Piles with a buyer's own forms that bear no mark: the sample week with every claim sold to the
 * buyer that has such forms, harmed as in {@link PileTest}. {@code -Dscan.forms=20} reads more.
 */
class FormPileTest {
    private static final int PILES = Integer.getInteger("scan.forms", 1);
    private static final int AT_ONCE = 12;
    private static final int[] SHARP_ENOUGH = {150, 150, 200, 300};

    @TempDir private Path folder;

    @Test
    void aFormWithoutAMarkIsPlacedByItsNeighboursAndLooksOrAskedAboutAndNeverPlacedWrong()
            throws Exception {
        PileScore inOrder = new PileScore(week());
        PileScore shuffled = new PileScore(week());
        for (int i = 0; i < PILES; i++) {
            inOrder.forms(folder.resolve("pile.pdf"), 100 + i, AT_ONCE, false, SHARP_ENOUGH);
            shuffled.forms(folder.resolve("pile.pdf"), 900 + i, AT_ONCE, true, SHARP_ENOUGH);
            if (PILES > 1) {
                System.out.println("in order: " + inOrder + "\nshuffled: " + shuffled);
                System.out.println(inOrder.doubtful);
            }
        }
        assertThat(inOrder.wrong).as("%s", inOrder).isEmpty();
        assertThat(shuffled.wrong).as("%s", shuffled).isEmpty();
        // The others lie beside no page of their pack, or somebody wrote over what tells them
        // apart.
        assertThat(inOrder.formsPlaced * 10).as("%s", inOrder).isGreaterThan(inOrder.forms * 7);
    }

    /** The sample week, made once, all of whose claims go to a buyer with forms without a mark. */
    private Path week() throws IOException {
        Path out = folder.resolve("packs");
        if (Files.exists(out)) {
            return out.resolve("2026-11-23-week");
        }
        Path templates = folder.resolve("templates");
        Files.createDirectories(templates.resolve("forms"));
        Offices.copy(Path.of("templates/forms"), templates.resolve("forms"));
        for (String scheme : new String[] {"stc", "veec"}) {
            Path mapping = templates.resolve("forms/whimbrel-" + scheme + ".csv");
            String comma = scheme.equals("stc") ? "#mark,no\n" : "#mark,no,,,,,\n";
            Files.writeString(mapping, comma, StandardOpenOption.APPEND);
        }
        String register =
                Files.readString(SampleWeek.CSV)
                        .replace("Kestrel Certificates", "Whimbrel Exchange")
                        .replace("Pipit and Wren", "Whimbrel Exchange");
        Path week = folder.resolve("week.csv");
        Disk.write(week, register.getBytes(StandardCharsets.UTF_8));
        Path tables = SampleWeek.TABLES;
        return new Batch((what, done, of) -> {})
                .prepare(
                        new Request(
                                new Request.Register(week, Optional.empty()),
                                new Request.FirmFiles(
                                        tables,
                                        Optional.of(templates),
                                        Optional.of(tables.resolve("rules"))),
                                out,
                                new Request.Run(LocalDate.of(2026, 11, 23), Instant.EPOCH, "test"),
                                Request.Extras.NONE,
                                Request.LedgerUse.NONE))
                .published()
                .orElseThrow();
    }
}
