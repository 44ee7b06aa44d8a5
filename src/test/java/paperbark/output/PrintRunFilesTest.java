package paperbark.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PrintRunFilesTest {

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 1", "100, 1", "101, 2", "200, 2", "2000, 20"})
    void everyPackLiesInOneFileAndInOrder(int packs, int files) {
        List<Integer> all = IntStream.range(0, packs).boxed().toList();
        List<Integer> spread = new ArrayList<>();
        List<String> names = PrintRunFiles.of(packs).stream().map(RunFile::file).toList();
        for (int i = 0; i < names.size(); i++) {
            spread.addAll(PrintRunFiles.part(all, i));
        }
        assertThat(names).hasSize(files).doesNotHaveDuplicates().startsWith("print-run.pdf");
        assertThat(spread).isEqualTo(all);
    }
}
