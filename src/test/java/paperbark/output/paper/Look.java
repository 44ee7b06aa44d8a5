package paperbark.output.paper;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.output.CaseFile;
import paperbark.output.CaseFiles;

public final class Look {
    public static void main(String[] a) throws Exception {
        Packs packs = new Packs(Optional.empty());
        Path out = Path.of(a[0]);
        for (CaseFile c :
                List.of(CaseFiles.installedSolar(), CaseFiles.bookedHeatPump(), CaseFiles.bare())) {
            Pack p = packs.make(c);
            Files.write(out.resolve(p.jobReference() + ".pdf"), p.pdf());
            System.out.println(p.jobReference() + " " + p.pdf().length + " " + p.papers());
            p.findings().forEach(f -> System.out.println("  " + f.where() + " " + f.fact()));
        }
    }
}
