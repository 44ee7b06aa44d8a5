package paperbark.office;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import paperbark.finding.Finding;
import paperbark.output.index.ScanPage;
import paperbark.output.index.ScanView;
import paperbark.scan.ReturnedPaper;
import paperbark.scan.SeenPage;
import paperbark.value.Days;

/** The page that shows what people should look at in a pile, with pictures of empty boxes. */
final class ScanReport {
    private ScanReport() {}

    static String of(String file, SortedPile pile, Attendant.World world) {
        List<ScanView.Line> lines = new ArrayList<>();
        for (Finding finding : pile.findings()) {
            lines.add(
                    new ScanView.Line(
                            finding.severity().word(),
                            finding.job().orElse(""),
                            finding.fact(),
                            finding.remedy()));
        }
        List<ScanView.Box> boxes = new ArrayList<>();
        for (ReturnedPaper paper : pile.papers()) {
            for (SeenPage page : paper.paper().signed() ? paper.pages() : List.<SeenPage>of()) {
                for (SeenPage.BlankBox box : page.blank()) {
                    boxes.add(
                            new ScanView.Box(
                                    paper.job(),
                                    paper.paper().title(),
                                    page.place().orElseThrow().page(),
                                    box.box().who() + ", " + box.box().what(),
                                    "data:image/png;base64,"
                                            + Base64.getEncoder().encodeToString(box.picture())));
                }
            }
        }
        return ScanPage.of(
                new ScanView(
                        Days.show(world.today().get()),
                        world.version(),
                        file,
                        pile.said(),
                        lines,
                        boxes));
    }
}
