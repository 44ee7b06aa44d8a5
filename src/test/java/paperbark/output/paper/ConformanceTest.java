package paperbark.output.paper;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;

class ConformanceTest {
    private static final Packs PACKS = new Packs(Optional.empty());

    static List<CaseFile> cases() {
        return List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump(), CaseFiles.bare());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void conforms(CaseFile caseFile) throws Exception {
        byte[] pdf = PACKS.make(caseFile).pdf();
        Files.write(Path.of("/tmp/tagx/" + caseFile.job().reference() + ".pdf"), pdf);
        long t = System.nanoTime();
        Judge.archivable(pdf).stream().limit(40).forEach(x -> System.out.println("A: " + x));
        System.out.println((System.nanoTime() - t) / 1e6);
        t = System.nanoTime();
        Judge.accessible(pdf).stream().limit(40).forEach(x -> System.out.println("U: " + x));
        System.out.println((System.nanoTime() - t) / 1e6);
    }
}
