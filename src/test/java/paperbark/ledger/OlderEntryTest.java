package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import paperbark.batch.EntryFile;

/** The same entry as it is found in several places, written by programs of several schemas. */
class OlderEntryTest {
    private static final Path WRITTEN =
            Path.of("src/test/resources/ledger/version-2/packs/2026-11-26-one/ledger.json");

    private EntryRecord second;

    @BeforeEach
    void readOneOfTheSecondSchema() throws IOException {
        second = EntryFile.read(WRITTEN).orElseThrow().entry();
        assertThat(personal(second).get(0)).contains("1TEASPOONLANEBALLANVIC3342");
    }

    private static List<List<String>> personal(EntryRecord entry) {
        return entry.rows(SealedTable.personal(entry.schema()));
    }

    /** The entry with nothing left of its first job but the seal. */
    private static EntryRecord forgotten(EntryRecord entry) {
        SealedTable table = SealedTable.personal(entry.schema());
        List<String> row =
                table.columns().stream()
                        .map(
                                c ->
                                        table.open().contains(c)
                                                ? ""
                                                : personal(entry).get(0).get(table.at(c)))
                        .toList();
        Map<String, List<List<String>>> rows = new HashMap<>(entry.rows());
        rows.put("personal", List.of(row, personal(entry).get(1)));
        return EntryRecordBuilder.builder(entry).rows(rows).build();
    }

    @Test
    void addressAndSaltStayAndPrintsGo() {
        List<String> lifted = personal(OlderEntry.lifted(second)).get(0);
        assertThat(lifted.subList(0, 5))
                .containsExactly("J-1", "1", "1TEASPOONLANEBALLANVIC3342", "", "");
        assertThat(SealedTable.PERSONAL.sealed(lifted.subList(0, 6))).isEqualTo(lifted);
    }

    @Test
    void whatWasForgottenBeforeItWasLiftedIsForgottenInAnOlderFileToo() {
        EntryRecord newer = OlderEntry.lifted(forgotten(second));
        assertThat(second.merged(newer)).contains(newer);
        assertThat(newer.merged(second)).contains(newer);
    }

    @Test
    void whatWasForgottenAfterItWasLiftedIsForgottenInAnOlderFileToo() {
        EntryRecord newer = forgotten(OlderEntry.lifted(second));
        assertThat(second.merged(newer)).contains(newer);
    }

    @Test
    void anotherEntryIsNotTakenForTheSame() {
        EntryRecord newer = OlderEntry.lifted(forgotten(second));
        Map<String, List<List<String>>> rows = new HashMap<>(second.rows());
        List<List<String>> others =
                second.rows().get("serial").stream()
                        .map(row -> row.stream().map(c -> c.replace("4512101", "4512109")).toList())
                        .toList();
        rows.put("serial", others);
        EntryRecord other = EntryRecordBuilder.builder(second).schema(2).rows(rows).build();
        assertThat(other.merged(newer)).isEmpty();
    }
}
