package paperbark.office;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.lang.Rational;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.GpsDirectory;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads what a camera wrote into a picture. The file is opened for reading only. */
final class ShotReader {
    private static final Pattern DAY = Pattern.compile("([0-9]{4})[:-]([0-9]{2})[:-]([0-9]{2}).*");
    private static final int DEGREES_A_HALF_TURN = 180;
    private static final int DEGREES_A_QUARTER_TURN = 90;

    private ShotReader() {}

    /** A file that is no whole picture. */
    static final class BrokenPicture extends Exception {
        private static final long serialVersionUID = 1L;

        BrokenPicture(String what) {
            super(what);
        }
    }

    /**
     * What the camera wrote; nothing where it wrote nothing.
     *
     * @throws BrokenPicture when the file is no picture or damaged, with what is wrong in words
     */
    static Shot read(JobFile file) throws BrokenPicture {
        if (file.bytes() == 0) {
            throw new BrokenPicture("empty");
        }
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file.path()))) {
            Metadata metadata = ImageMetadataReader.readMetadata(in, file.bytes());
            return new Shot(day(metadata), spot(metadata));
        } catch (ImageProcessingException e) {
            throw new BrokenPicture("damaged, or of another kind than its name says");
        } catch (IOException e) {
            throw new BrokenPicture("ends too early, or may not be read");
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            // The library believes the lengths that a file tells.
            throw new BrokenPicture("damaged");
        }
    }

    private static Optional<LocalDate> day(Metadata metadata) {
        return Stream.of(
                        text(metadata, ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL),
                        text(metadata, ExifSubIFDDirectory.TAG_DATETIME_DIGITIZED))
                .flatMap(Optional::stream)
                .findFirst()
                .flatMap(ShotReader::day);
    }

    private static Optional<LocalDate> day(String text) {
        Matcher parts = DAY.matcher(text);
        if (!parts.matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    LocalDate.of(
                            Integer.parseInt(parts.group(1)),
                            Integer.parseInt(parts.group(2)),
                            Integer.parseInt(parts.group(3))));
        } catch (DateTimeException unset) {
            // A clock that was never set writes zeros.
            return Optional.empty();
        }
    }

    /** The day of the last change is none of these: it is whenever somebody cropped the picture. */
    private static Optional<String> text(Metadata metadata, int tag) {
        return metadata.getDirectoriesOfType(ExifSubIFDDirectory.class).stream()
                .map(d -> d.getString(tag))
                .filter(Objects::nonNull)
                .map(String::strip)
                .filter(t -> !t.isEmpty())
                .findFirst();
    }

    private static Optional<Shot.Spot> spot(Metadata metadata) {
        for (GpsDirectory gps : metadata.getDirectoriesOfType(GpsDirectory.class)) {
            Optional<BigDecimal> south =
                    degrees(gps, GpsDirectory.TAG_LATITUDE, GpsDirectory.TAG_LATITUDE_REF, "S");
            Optional<BigDecimal> east =
                    degrees(gps, GpsDirectory.TAG_LONGITUDE, GpsDirectory.TAG_LONGITUDE_REF, "E");
            if (south.isPresent() && east.isPresent() && isOnEarth(south.get(), east.get())) {
                return Optional.of(new Shot.Spot(south.get(), east.get()));
            }
        }
        return Optional.empty();
    }

    /** A receiver that had not found its place yet writes zero and zero. */
    private static boolean isOnEarth(BigDecimal south, BigDecimal east) {
        boolean unset = south.signum() == 0 && east.signum() == 0;
        return !unset
                && south.abs().compareTo(BigDecimal.valueOf(DEGREES_A_QUARTER_TURN)) <= 0
                && east.abs().compareTo(BigDecimal.valueOf(DEGREES_A_HALF_TURN)) <= 0;
    }

    /**
     * Degrees, minutes and seconds as one number.
     *
     * @param positive the letter of the direction that counts upwards
     */
    private static Optional<BigDecimal> degrees(
            GpsDirectory gps, int tag, int reference, String positive) {
        Rational[] parts = gps.getRationalArray(tag);
        String direction = gps.getString(reference);
        if (parts == null || parts.length != 3 || direction == null || direction.isBlank()) {
            return Optional.empty();
        }
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal unit = BigDecimal.ONE;
        for (Rational part : parts) {
            if (part.getDenominator() == 0) {
                return Optional.empty();
            }
            sum =
                    sum.add(
                            BigDecimal.valueOf(part.getNumerator())
                                    .divide(
                                            BigDecimal.valueOf(part.getDenominator())
                                                    .multiply(unit),
                                            MathContext.DECIMAL64));
            unit = unit.multiply(BigDecimal.valueOf(60));
        }
        boolean upwards = direction.strip().equalsIgnoreCase(positive);
        return Optional.of(upwards ? sum : sum.negate());
    }
}
