package paperbark.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import paperbark.outside.Outside;

/** The image with a Java of its own, which the profile {@code image} makes; required in CI. */
@Tag("outside")
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class ImageIT {
    @TempDir private Path folder;

    private static Path image() {
        Path program = Unpacked.packaged();
        Path image = program.resolveSibling("image").resolve(program.getFileName());
        if (!Files.isDirectory(image) && "true".equals(System.getenv("CI"))) {
            throw new AssertionError("no image was made; CI needs the profile image");
        }
        Assumptions.assumeTrue(Files.isDirectory(image), "made with mvn -Pimage only");
        return image;
    }

    @Test
    void itPreparesTheSampleWeekWithoutAnyOtherJava() throws Exception {
        Unpacked program = Unpacked.of(image(), folder, Unpacked.ODD);
        Path nothing = Files.createDirectories(folder.resolve("nothing"));
        Map<String, String> noJava = Map.of("PATH", nothing.toString());
        Outside.Result setup = program.run(program.launcher(), folder, noJava, "setup", "Büro");
        assertThat(setup.exitCode()).as(setup.out() + setup.err()).isZero();

        Outside.Result prepare =
                program.run(
                        program.launcher(),
                        folder,
                        noJava,
                        "prepare",
                        "Büro/sample-register.xlsx",
                        "--as-of",
                        "2026-11-23");
        assertThat(prepare.exitCode()).as(prepare.out() + prepare.err()).isEqualTo(10);
        assertThat(folder.resolve("Büro/packs/2026-11-23-sample-register/index.html"))
                .isRegularFile();
    }
}
