package paperbark.office;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What a camera wrote into a picture.
 *
 * @param day the day by the camera's own clock, wherever that was set to
 * @param spot where it was taken
 */
record Shot(Optional<LocalDate> day, Optional<Spot> spot) {
    /** Of a picture that tells nothing, such as one that was sent by a messenger. */
    static final Shot SILENT = new Shot(Optional.empty(), Optional.empty());

    /**
     * A place on the earth.
     *
     * @param south degrees south of the equator; negative in the northern half
     * @param east degrees east of Greenwich; negative in the western half
     */
    record Spot(BigDecimal south, BigDecimal east) {
        /** In words, to about a kilometre: {@code 37.60 south, 144.23 east}. */
        @Override
        public String toString() {
            return words(south, "south", "north") + ", " + words(east, "east", "west");
        }

        private static String words(BigDecimal degrees, String word, String opposite) {
            return degrees.abs().setScale(2, RoundingMode.HALF_UP)
                    + " "
                    + (degrees.signum() < 0 ? opposite : word);
        }
    }
}
