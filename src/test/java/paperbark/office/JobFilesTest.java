package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobFilesTest {
    private static final List<String> JOBS =
            List.of("SB-1032", "SB-10321", "SB-1033", "SB-1033-2", "2026/117", "1034");

    @TempDir Path folder;

    @Test
    void findsWhatLiesInTheFolderOfAJobOrIsNamedAfterIt() throws IOException {
        put("SB-1032/tank.jpg");
        put("sb-1032/roof/IMG_4711.HEIC");
        put("SB-1032 compliance.pdf");
        put("2026-11/tank of sb_1032.png");
        put("SB-1032-receipt.txt");
        put("SB-10321 tank.jpg");
        JobFiles files = look();
        assertThat(names(files, "sb-1032"))
                .containsExactly(
                        "2026-11/tank of sb_1032.png",
                        "SB-1032 compliance.pdf",
                        "SB-1032-receipt.txt",
                        "SB-1032/tank.jpg",
                        "sb-1032/roof/IMG_4711.HEIC");
        assertThat(files.of("SB-1032").stream().map(JobFile::kind))
                .containsExactly(
                        JobFile.Kind.PICTURE,
                        JobFile.Kind.PDF,
                        JobFile.Kind.OTHER,
                        JobFile.Kind.PICTURE,
                        JobFile.Kind.PICTURE);
        assertThat(names(files, "SB-10321")).containsExactly("SB-10321 tank.jpg");
        assertThat(files.aside()).isEmpty();
    }

    @Test
    void theLongestNumberIsMeant() throws IOException {
        put("SB-1033-2 tank.jpg");
        put("SB-1033-3 tank.jpg");
        JobFiles files = look();
        assertThat(names(files, "SB-1033-2")).containsExactly("SB-1033-2 tank.jpg");
        assertThat(names(files, "SB-1033")).containsExactly("SB-1033-3 tank.jpg");
    }

    @Test
    void signsThatNoFileCanBearAreReplaced() throws IOException {
        put("2026-117 tank.jpg");
        put("2026-117-5be1aa/tank.jpg");
        assertThat(names(look(), "2026/117"))
                .containsExactly("2026-117 tank.jpg", "2026-117-5be1aa/tank.jpg");
    }

    @Test
    void aPictureThatACameraNumberedIsOfNoJob() throws IOException {
        put("IMG_1034.jpg");
        put("1034 tank.jpg");
        JobFiles files = look();
        assertThat(names(files, "1034")).containsExactly("1034 tank.jpg");
        assertThat(files.aside())
                .containsExactly(
                        new JobFiles.Aside(
                                "IMG_1034.jpg",
                                "neither its name nor its folder's is a job number"));
    }

    @Test
    void whatTellsOfTwoJobsIsOfNeither() throws IOException {
        put("SB-1032/SB-1033 tank.jpg");
        JobFiles files = look();
        assertThat(files.of("SB-1032")).isEmpty();
        assertThat(files.of("SB-1033")).isEmpty();
        assertThat(files.aside())
                .containsExactly(
                        new JobFiles.Aside(
                                "SB-1032/SB-1033 tank.jpg",
                                "names tell of several jobs: SB-1032, SB-1033"));
    }

    @Test
    void linksAreNotFollowedAndPartsOfFilesNotSeen() throws IOException {
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        Files.writeString(elsewhere.resolve("secret.jpg"), "x");
        put("SB-1032/.hidden.jpg");
        put("SB-1032/tank.jpg.part");
        put(".stfolder/SB-1032.jpg");
        Files.createSymbolicLink(photos().resolve("SB-1032/all"), elsewhere);
        Files.createSymbolicLink(
                photos().resolve("SB-1032/one.jpg"), elsewhere.resolve("secret.jpg"));
        JobFiles files = look();
        assertThat(files.of("SB-1032")).isEmpty();
        assertThat(files.aside().stream().map(JobFiles.Aside::name))
                .containsExactly("SB-1032/all", "SB-1032/one.jpg");
    }

    @Test
    void theFolderItselfMayBeALink() throws IOException {
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        Files.writeString(elsewhere.resolve("SB-1032.jpg"), "x");
        Files.createSymbolicLink(folder.resolve("photos"), elsewhere);
        assertThat(names(look(), "SB-1032")).containsExactly("SB-1032.jpg");
    }

    @Test
    void whatIsTooLargeOrTooMuchIsToldAndTheRestIsTaken() throws IOException {
        for (int i = 0; i <= JobFiles.MOST_OF_A_JOB; i++) {
            put("SB-1032/%04d.jpg".formatted(i));
        }
        Path large = put("SB-1033 film.mp4");
        try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(JobFiles.MOST_BYTES + 1);
        }
        JobFiles files = look();
        assertThat(files.of("SB-1032")).hasSize(JobFiles.MOST_OF_A_JOB);
        assertThat(files.aside())
                .containsExactly(
                        new JobFiles.Aside("SB-1032/0200.jpg", "the job has 200 files before it"),
                        new JobFiles.Aside("SB-1033 film.mp4", "larger than 50 MB"));
    }

    @Test
    void withoutTheFolderThereIsNothing() throws IOException {
        assertThat(look().of("SB-1032")).isEmpty();
        assertThat(look().aside()).isEmpty();
    }

    private JobFiles look() throws IOException {
        return JobFiles.in(new Office(folder), JOBS);
    }

    private static List<String> names(JobFiles files, String job) {
        return files.of(job).stream().map(JobFile::name).toList();
    }

    private Path photos() {
        return folder.resolve("photos");
    }

    private Path put(String name) throws IOException {
        Path file = photos().resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, "x");
    }
}
