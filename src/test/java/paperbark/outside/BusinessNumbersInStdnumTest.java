package paperbark.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.Abn;
import paperbark.value.Acn;

/**
 * The general-purpose number library python3-stdnum (Debian) as a second opinion on check digits.
 * Known differences, left out of the list: it takes nine zeros for an ACN, and full-width digits
 * for digits.
 */
@Tag("outside")
class BusinessNumbersInStdnumTest {
    private static final int NUMBERS = 4000;
    private static final String JUDGE =
            """
            import sys
            from stdnum.au import abn, acn
            for line in open(sys.argv[1]):
                number = line.strip()
                print(int(abn.is_valid(number)), int(acn.is_valid(number)))
            """;

    @TempDir private Path directory;

    @Test
    void stdnumAgreesOnEveryNumber() throws Exception {
        Outside.needs("python3");
        List<String> numbers = numbers();
        Path list = Files.write(directory.resolve("numbers.txt"), numbers);
        Path judge = Files.writeString(directory.resolve("judge.py"), JUDGE);
        // Debian's own interpreter: another python3 earlier on the path would not see Debian's
        // packages.
        Outside.Result result =
                Outside.run(directory, "/usr/bin/python3", judge.toString(), list.toString());
        assertThat(result.exitCode()).as(result.err()).isZero();
        List<String> verdicts = result.out().lines().toList();
        assertThat(verdicts).hasSize(numbers.size());
        int abns = 0;
        for (int i = 0; i < numbers.size(); i++) {
            int abn = Abn.parse(numbers.get(i)).toOptional().isPresent() ? 1 : 0;
            int acn = Acn.parse(numbers.get(i)).toOptional().isPresent() ? 1 : 0;
            assertThat(abn + " " + acn).as(numbers.get(i)).isEqualTo(verdicts.get(i));
            abns += abn;
        }
        assertThat(abns).as("sound ABNs among the numbers").isGreaterThan(NUMBERS / 10);
    }

    /**
     * Sound and unsound numbers: every possible pair of check digits for some bodies, and random
     * ones.
     */
    private static List<String> numbers() {
        Random random = new Random(20261123);
        List<String> numbers =
                new ArrayList<>(
                        List.of(
                                "51824753556",
                                "53004085616",
                                "10000000000",
                                "004085616",
                                "000000019"));
        while (numbers.size() < NUMBERS) {
            String body = String.format("%09d", 1 + random.nextInt(999_999_998));
            numbers.add(body);
            numbers.add(10 + random.nextInt(90) + body);
            for (int check = 10; check < 100 && numbers.size() % 7 == 0; check++) {
                numbers.add(check + body);
            }
            for (int check = 10; check < 100; check++) {
                if (Abn.parse(check + body).toOptional().isPresent()) {
                    numbers.add(check + body);
                }
            }
        }
        return numbers;
    }
}
