package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import paperbark.outside.Outside;

/** LibreOffice as a second opinion. */
final class LibreOffice {
    // By default stored results are believed; 0 stands for "always recalculate".
    private static final String SETTINGS =
            """
            <?xml version="1.0" encoding="UTF-8"?>
            <oor:items xmlns:oor="http://openoffice.org/2001/registry">
            <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
            </oor:items>
            """;

    private LibreOffice() {}

    /** The workbook opened, recalculated and saved again as .xlsx. */
    static byte[] recalculated(Path folder, byte[] workbook) {
        return converted(folder, workbook, "xlsx");
    }

    /** The workbook in another form. */
    static byte[] converted(Path folder, byte[] workbook, String form) {
        try {
            Path in = Files.write(folder.resolve("book.xlsx"), workbook);
            Path user = Files.createDirectories(folder.resolve("profile/user"));
            Files.writeString(user.resolve("registrymodifications.xcu"), SETTINGS);
            Path out = Files.createDirectories(folder.resolve("out"));
            Outside.Result result =
                    Outside.run(
                            folder,
                            "soffice",
                            "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                            "--headless",
                            "--convert-to",
                            form,
                            "--outdir",
                            out.toString(),
                            in.toString());
            assertThat(result.exitCode()).as(result.err()).isZero();
            return Files.readAllBytes(out.resolve("book." + form));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
