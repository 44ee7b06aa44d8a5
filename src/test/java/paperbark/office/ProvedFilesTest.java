package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.ledger.Resealed;

/** What was proved is not read again, and whatever changed since is. */
class ProvedFilesTest {
    @TempDir private Path folder;

    private Office office;
    private Path batch;
    private Path entry;

    @BeforeEach
    void workForADay() throws IOException {
        office = Offices.make(folder.resolve("office"));
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1));
        assertThat(run("watch", ".", "--once", "--quiet-for", "0").exitCode()).isZero();
        batch = office.packs().resolve("2026-11-23-one");
        entry = batch.resolve("ledger.json");
        assertThat(run("owed").exitCode()).isZero();
    }

    private Program.Run run(String... words) {
        return Program.run(office.root(), words);
    }

    private List<BatchFolders.Found> found() throws IOException {
        return new BatchFolders(office, ProvedFiles.of(office)).all();
    }

    @Test
    void anUnchangedFolderIsNotReadAgainAndAChangedOneIs() throws IOException {
        assertThat(found()).singleElement().matches(f -> f.read().isEmpty());
        Files.writeString(entry, Files.readString(entry) + "\n");
        assertThat(found()).isEmpty();
        assertThat(new BatchFolders(office, ProvedFiles.of(office)).noticed())
                .singleElement()
                .asString()
                .contains("is not as the batch's manifest says");
    }

    /** As many letters, the manifest's hash made to fit, and every time set back. */
    @Test
    void anEntryChangedInSecretIsNoticed() throws IOException {
        Path manifest = batch.resolve("manifest.json");
        FileTime then = Files.getLastModifiedTime(entry);
        FileTime also = Files.getLastModifiedTime(manifest);
        String hash = DigestUtils.sha256Hex(Files.readAllBytes(entry));
        String told = Files.readString(entry);
        assertThat(told).contains("\"50580\"");
        Files.writeString(entry, told.replace("\"50580\"", "\"50581\""));
        Files.writeString(
                manifest,
                Files.readString(manifest)
                        .replace(hash, DigestUtils.sha256Hex(Files.readAllBytes(entry))));
        Files.setLastModifiedTime(entry, then);
        Files.setLastModifiedTime(manifest, also);
        Program.Run owed = run("owed");
        assertThat(owed.exitCode()).isEqualTo(21);
        assertThat(owed.err()).contains("packs/2026-11-23-one tells entry 1 otherwise");
    }

    @Test
    void aLedgerSealedAnewDisagreesWithFoldersThatAreAsTheyWere() throws Exception {
        Invariants.change(office.root(), "UPDATE claim SET expected_cents = expected_cents + 1");
        Resealed.ledger(office.ledgerFile());
        Program.Run owed = run("owed");
        assertThat(owed.exitCode()).isEqualTo(21);
        assertThat(owed.err()).contains("packs/2026-11-23-one");
    }

    @Test
    void aNoteThatIsCutOrForgedByHandCountsForNothing() throws IOException {
        Path note = office.packs().resolve(ProvedFiles.NAME);
        String all = Files.readString(note);
        for (String harmed :
                List.of("", "\n", all.substring(0, all.length() - 5), all.replace("one", "two"))) {
            Files.writeString(note, harmed);
            assertThat(found()).singleElement().matches(f -> f.read().isPresent());
            assertThat(run("owed").exitCode()).isZero();
            assertThat(note).hasContent(all);
        }
    }
}
