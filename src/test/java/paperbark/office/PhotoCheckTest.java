package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.rules.Rulebook;
import paperbark.value.State;

class PhotoCheckTest {
    private static final LocalDate INSTALLED = LocalDate.of(2026, 11, 16);
    // Ballan in Victoria, to a minute of arc.
    private static final int SOUTH = 37 * 60 + 36;
    private static final int EAST = 144 * 60 + 14;

    @TempDir Path folder;

    @ParameterizedTest
    @CsvSource({
        "2026:11:16 10:15:00, false",
        "2026:11:15 23:59:59, false",
        "2026:11:17 00:00:00, false",
        "2026:11:14 12:00:00, true",
        "2026:11:18 12:00:00, true",
        "2025:11:16 10:15:00, true",
        "0000:00:00 00:00:00, false",
        "2026:13:40 00:00:00, false",
        "yesterday, false"
    })
    void aDayMoreOrLessIsTheCamerasZone(String moment, boolean contradicts) throws IOException {
        new Camera().at(moment).shoot(photo("J-1/tank.jpg"));
        assertThat(codes(of(Optional.of(INSTALLED), Optional.of(State.VIC))))
                .isEqualTo(contradicts ? List.of(FindingCode.PHOTO_OF_OTHER_DAY) : List.of());
    }

    @Test
    void theDayIsNamedAsTheCameraHasIt() throws IOException {
        new Camera().at("2026:10:02 08:00:00").shoot(photo("J-1/tank.jpg"));
        Finding finding = of(Optional.of(INSTALLED), Optional.of(State.VIC)).findings().get(0);
        assertThat(finding.fact())
                .isEqualTo(
                        "A picture was taken on another day than the installation of 16 Nov 2026, by"
                                + " the camera's clock: J-1/tank.jpg (2 Oct 2026).");
        assertThat(finding.job()).contains("J-1");
    }

    @ParameterizedTest
    @CsvSource({"VIC, false", "NSW, false", "QLD, true", "TAS, true", "WA, true"})
    void aPlaceIsHeldAgainstTheStateAlone(State state, boolean contradicts) throws IOException {
        new Camera().in(SOUTH, EAST).shoot(photo("J-1/tank.jpg"));
        assertThat(codes(of(Optional.of(INSTALLED), Optional.of(state))))
                .isEqualTo(contradicts ? List.of(FindingCode.PHOTO_OF_OTHER_PLACE) : List.of());
    }

    @Test
    void northAndWestAreReadAsSuch() throws IOException {
        new Camera().in(-SOUTH, -EAST).shoot(photo("J-1/tank.jpg"));
        assertThat(of(Optional.empty(), Optional.of(State.VIC)).findings().get(0).fact())
                .isEqualTo(
                        "A picture was taken outside VIC, where the site of the job is: J-1/tank.jpg"
                                + " (37.60 north, 144.23 west).");
    }

    @Test
    void aReceiverThatFoundNoPlaceSaysNothing() throws IOException {
        new Camera().in(0, 0).shoot(photo("J-1/tank.jpg"));
        PhotoCheck.Result result = of(Optional.of(INSTALLED), Optional.of(State.VIC));
        assertThat(result.findings()).isEmpty();
        assertThat(result.withPlace()).isZero();
    }

    @Test
    void whatIsNotKnownIsNotCompared() throws IOException {
        new Camera().at("2020:01:01 00:00:00").in(SOUTH, EAST).shoot(photo("J-1/tank.jpg"));
        assertThat(of(Optional.empty(), Optional.empty()).findings()).isEmpty();
    }

    @Test
    void pictureOfBeforeAndThoseThatAPersonCheckedAreLeftAlone() throws IOException {
        Camera early = new Camera().at("2026:10:02 08:00:00");
        early.shoot(photo("J-1/before/heater.jpg"));
        early.shoot(photo("J-1/old plate.jpg"));
        early.shoot(photo("J-1/checked/tank.jpg"));
        Camera late = new Camera().at("2026:12:02 08:00:00");
        late.shoot(photo("J-1/before/plate.jpg"));
        assertThat(of(Optional.of(INSTALLED), Optional.of(State.VIC)).findings())
                .singleElement()
                .extracting(Finding::fact)
                .asString()
                .contains("J-1/before/plate.jpg (2 Dec 2026).");
    }

    @Test
    void severalPicturesAreOneFinding() throws IOException {
        for (int i = 1; i <= 5; i++) {
            new Camera().at("2026:10:0" + i + " 08:00:00").shoot(photo("J-1/" + i + ".jpg"));
        }
        assertThat(of(Optional.of(INSTALLED), Optional.of(State.VIC)).findings())
                .singleElement()
                .extracting(Finding::fact)
                .asString()
                .startsWith("5 pictures were taken")
                .endsWith("J-1/3.jpg (3 Oct 2026), and 2 more.");
    }

    @Test
    void aCertificateOrReceiptIsNoPictureOfTheJob() throws IOException {
        new Camera().at("2026:10:02 08:00:00").shoot(photo("J-1/plumbing certificate.jpg"));
        new Camera().at("2026:10:02 08:00:00").shoot(photo("J-1/scrap receipt.jpg"));
        PhotoCheck.Result result = of(Optional.of(INSTALLED), Optional.of(State.VIC));
        assertThat(result.findings()).isEmpty();
        assertThat(result.pictures()).isZero();
    }

    @Test
    void picturesAreCountedAndThoseThatTellDayOrPlace() throws IOException {
        new Camera().at("2026:11:16 08:00:00").in(SOUTH, EAST).shoot(photo("J-1/both.jpg"));
        new Camera().at("2026:11:16 08:00:00").in(0, 0).shoot(photo("J-1/day.jpg"));
        new Camera().at("0000:00:00 00:00:00").in(0, 0).shoot(photo("J-1/none.jpg"));
        PhotoCheck.Result result = of(Optional.of(INSTALLED), Optional.of(State.VIC));
        assertThat(result).isEqualTo(new PhotoCheck.Result(List.of(), 3, 2, 1, Map.of()));
    }

    @Test
    void ofOtherFilesOnlyEmptyAndVanishedOnesAreBrokenAndACertificateIsReadAsOne()
            throws IOException {
        Files.createDirectories(photo("J-1"));
        Files.writeString(photo("J-1/a-notes.txt"), "gate code");
        Files.write(photo("J-1/b-empty.txt"), new byte[0]);
        Files.writeString(photo("J-1/c-coc.pdf"), "%PDF-1.7 as far as anybody looks");
        Files.writeString(photo("J-1/d-gone.txt"), "soon");
        List<JobFile> files = JobFiles.in(new Office(folder), List.of("J-1")).of("J-1");
        Files.delete(photo("J-1/d-gone.txt"));
        PhotoCheck.About about = new PhotoCheck.About("J-1", Optional.empty(), Optional.empty());
        assertThat(check().of(about, files, INSTALLED).findings())
                .singleElement()
                .extracting(Finding::fact)
                .isEqualTo(
                        "2 files cannot be opened: J-1/b-empty.txt (empty), J-1/d-gone.txt (not there"
                                + " any more).");
    }

    @Test
    void filesOfNoJobAreOneFindingThatSaysWhy() {
        assertThat(PhotoCheck.aside(List.of())).isEmpty();
        List<JobFiles.Aside> one = List.of(new JobFiles.Aside("x.jpg", "no job is named"));
        assertThat(PhotoCheck.aside(one).orElseThrow().fact())
                .isEqualTo("A file is of no job for certain: x.jpg (no job is named).");
        List<JobFiles.Aside> two = List.of(one.get(0), new JobFiles.Aside("y.jpg", "two jobs"));
        assertThat(PhotoCheck.aside(two).orElseThrow().fact())
                .startsWith("2 files are of no job for certain: x.jpg");
    }

    @Test
    void brokenFilesAreOneFindingAndTheOthersAreRead() throws IOException {
        Files.createDirectories(photo("J-1"));
        Files.write(photo("J-1/a-empty.jpg"), new byte[0]);
        Files.writeString(photo("J-1/b-text.jpg"), "This is no picture at all.");
        Files.writeString(photo("J-1/c-text.pdf"), "Neither is this one.");
        new Camera().at("2026:10:02 08:00:00").shoot(photo("J-1/tank.jpg"));
        PhotoCheck.Result result = of(Optional.of(INSTALLED), Optional.of(State.VIC));
        assertThat(codes(result))
                .containsExactly(FindingCode.PHOTO_OF_OTHER_DAY, FindingCode.PHOTO_UNREADABLE);
        assertThat(result.findings().get(1).fact())
                .isEqualTo(
                        "3 files cannot be opened: J-1/a-empty.jpg (empty), J-1/b-text.jpg (damaged,"
                                + " or of another kind than its name says), J-1/c-text.pdf (no PDF file).");
    }

    /** Whatever stands in a file, it is told of at worst, and it stays as it is. */
    @Test
    void harmedPicturesNeverEndTheLookAndStayAsTheyAre() throws IOException {
        byte[] whole = new Camera().at("2026:11:16 08:00:00").in(SOUTH, EAST).picture();
        Random chance = new Random(20261130);
        for (int i = 0; i < 400; i++) {
            byte[] harmed = Arrays.copyOf(whole, 20 + chance.nextInt(whole.length - 20));
            for (int n = 0; n < 6; n++) {
                harmed[chance.nextInt(Math.min(harmed.length, 300))] = (byte) chance.nextInt(256);
            }
            Path file = photo("J-1/harmed.jpg");
            Files.createDirectories(file.getParent());
            Files.write(file, harmed);
            of(Optional.of(INSTALLED), Optional.of(State.VIC));
            assertThat(Files.readAllBytes(file)).isEqualTo(harmed);
        }
    }

    @Test
    void aFileIsReadAgainOnlyWhenItChanged() throws IOException {
        Path file = new Camera().at("2026:10:02 08:00:00").shoot(photo("J-1/tank.jpg"));
        PhotoCheck check = check();
        assertThat(codes(look(check))).containsExactly(FindingCode.PHOTO_OF_OTHER_DAY);
        byte[] other = new Camera().at("2026:11:16 08:00:00").picture();
        var modified = Files.getLastModifiedTime(file);
        Files.write(file, other);
        Files.setLastModifiedTime(file, modified);
        PhotoCheck again = check.again(Rulebook.load(Optional.empty()).stateBoxes());
        assertThat(codes(look(again))).containsExactly(FindingCode.PHOTO_OF_OTHER_DAY);
        Files.setLastModifiedTime(
                file, java.nio.file.attribute.FileTime.fromMillis(modified.toMillis() + 5000));
        assertThat(codes(look(again))).isEmpty();
    }

    private static PhotoCheck check() {
        return PhotoCheck.with(Rulebook.load(Optional.empty()).stateBoxes());
    }

    private PhotoCheck.Result look(PhotoCheck check) throws IOException {
        return check.of(
                new PhotoCheck.About("J-1", Optional.of(INSTALLED), Optional.of(State.VIC)),
                JobFiles.in(new Office(folder), List.of("J-1")).of("J-1"),
                LocalDate.of(2026, 11, 23));
    }

    private PhotoCheck.Result of(Optional<LocalDate> installedOn, Optional<State> state)
            throws IOException {
        return check().of(
                        new PhotoCheck.About("J-1", installedOn, state),
                        JobFiles.in(new Office(folder), List.of("J-1")).of("J-1"),
                        LocalDate.of(2026, 11, 23));
    }

    private static List<FindingCode> codes(PhotoCheck.Result result) {
        return result.findings().stream().map(Finding::code).toList();
    }

    private Path photo(String name) {
        return folder.resolve("photos").resolve(name);
    }
}
