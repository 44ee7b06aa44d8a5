package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.EntryFile;

/** The same entry as it is found in several places, written by programs of several schemas. */
class OlderEntryTest {
    private static final Path WRITTEN = Path.of("src/test/resources/ledger");

    private EntryRecord second;

    @BeforeEach
    void readOneOfTheSecondSchema() throws IOException {
        second = written(2);
        assertThat(personal(second).get(0)).contains("1TEASPOONLANEBALLANVIC3342");
    }

    /** The first batch as the program of that schema wrote it. */
    private static EntryRecord written(int schema) throws IOException {
        Path file = WRITTEN.resolve("version-" + schema + "/packs/2026-11-26-one/ledger.json");
        return EntryFile.read(file).orElseThrow().entry();
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

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void anEntryIsBroughtToTheSchemaOfTheOtherOneAndNoFurther(int schema) throws IOException {
        EntryRecord old = written(schema);
        assertThat(old.schema()).isEqualTo(schema);
        assertThat(old.hasOlderSchema()).isTrue();
        EntryRecord next = schema == 3 ? OlderEntry.lifted(old) : written(schema + 1);
        assertThat(OlderEntry.lifted(old, next).schema()).isEqualTo(schema + 1);
        EntryRecord today = OlderEntry.lifted(old);
        assertThat(today.schema()).isEqualTo(Schema.VERSION);
        assertThat(today.hasOlderSchema()).isFalse();
        assertThat(today.rowsSha256()).isEqualTo(Seals.rows(today));
        assertThat(today.withDetail("55")).isEqualTo(withDetail(today));
    }

    private static EntryRecord withDetail(EntryRecord entry) {
        return EntryRecordBuilder.builder(entry).detailSha256("55").build();
    }

    @Test
    void ofTheFirstSchemaEachJobHasTheSiteAndTheDayOfItsOwnClaim() throws IOException {
        EntryRecord lifted = OlderEntry.lifted(written(1));
        assertThat(personal(lifted))
                .extracting(row -> row.get(0) + " " + row.get(2))
                .containsExactly(
                        "J-1 1TEASPOONLANEBALLANVIC3342", "J-2 2TEASPOONLANEBALLANVIC3342");
        assertThat(lifted.rows().get("job"))
                .extracting(row -> row.get(0) + " " + row.get(6))
                .containsExactly("J-1 2026-11-16", "J-2 2026-11-16");
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
