package paperbark.firm;

import java.util.Map;
import paperbark.value.DateRange;

/**
 * What the federal register says of a product for a period.
 *
 * @param eligible installation days covered, both ends included
 * @param basis what the figures stand for
 * @param stcs whole STCs by zone (solar 1 to 4, heat pumps 1 to 5); a zone that is absent is not
 *     listed
 * @param registerVersion version of the register that it was read from
 * @param row 1-based row of the products table
 */
public record Listing(
        DateRange eligible,
        Basis basis,
        Map<Integer, Integer> stcs,
        String registerVersion,
        int row) {

    /** What a figure of the register stands for. */
    public enum Basis {
        /** Ten years, of which an installation earns the years that are left. */
        TEN_YEARS("ten years"),
        /**
         * The number for model, zone and installation period, which is taken as it stands. Source:
         * Renewable Energy (Electricity) Regulations 2001 reg 19A.
         */
        PERIOD("period");

        private final String word;

        Basis(String word) {
            this.word = word;
        }

        /** The word in the table. */
        public String word() {
            return word;
        }
    }

    /** Keeps the zones from being changed. */
    public Listing {
        stcs = Map.copyOf(stcs);
    }
}
