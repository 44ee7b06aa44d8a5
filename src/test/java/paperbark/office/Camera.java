package paperbark.office;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;

/**
 * Makes JPEG pictures with what cameras write into them, laid out by hand as the exchangeable image
 * file format has it: big-endian, one directory each for the picture, the exposure and the place.
 */
final class Camera {
    private static final int ASCII = 2;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int DATE_TIME_ORIGINAL = 0x9003;
    private static final int EXPOSURE = 0x8769;
    private static final int PLACE = 0x8825;

    private Optional<String> moment = Optional.empty();
    private Optional<int[]> place = Optional.empty();

    /** With the moment by its clock, such as {@code 2026:11:20 10:15:00}. */
    Camera at(String text) {
        moment = Optional.of(text);
        return this;
    }

    /** With a place in whole minutes of arc; south and east are positive. */
    Camera in(int minutesSouth, int minutesEast) {
        place = Optional.of(new int[] {minutesSouth, minutesEast});
        return this;
    }

    /** Takes a picture. */
    Path shoot(Path file) throws IOException {
        Files.createDirectories(file.getParent());
        return Files.write(file, picture());
    }

    byte[] picture() throws IOException {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(8, 8, BufferedImage.TYPE_BYTE_GRAY), "jpeg", plain);
        if (moment.isEmpty() && place.isEmpty()) {
            return plain.toByteArray();
        }
        byte[] tiff = tiff();
        ByteBuffer whole = ByteBuffer.allocate(plain.size() + 10 + tiff.length);
        whole.put(plain.toByteArray(), 0, 2);
        whole.putShort((short) 0xffe1).putShort((short) (tiff.length + 8));
        whole.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(tiff);
        whole.put(plain.toByteArray(), 2, plain.size() - 2);
        return whole.array();
    }

    private record Tag(int id, int type, int count, byte[] value) {}

    private byte[] tiff() {
        List<Tag> exposure = new ArrayList<>();
        moment.ifPresent(m -> exposure.add(text(DATE_TIME_ORIGINAL, m)));
        List<Tag> spot = new ArrayList<>();
        place.ifPresent(
                p -> {
                    spot.add(text(1, p[0] < 0 ? "N" : "S"));
                    spot.add(angle(2, p[0]));
                    spot.add(text(3, p[1] < 0 ? "W" : "E"));
                    spot.add(angle(4, p[1]));
                });
        int first = 8 + 2 + 2 * 12 + 4;
        byte[] exposurePart = directory(exposure, first);
        byte[] spotPart = directory(spot, first + exposurePart.length);
        byte[] root =
                directory(
                        List.of(
                                new Tag(EXPOSURE, LONG, 1, number(first)),
                                new Tag(PLACE, LONG, 1, number(first + exposurePart.length))),
                        8);
        ByteBuffer all = ByteBuffer.allocate(first + exposurePart.length + spotPart.length);
        all.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
        return all.put(root).put(exposurePart).put(spotPart).array();
    }

    private static byte[] directory(List<Tag> tags, int at) {
        int behind = tags.stream().mapToInt(t -> t.value().length > 4 ? t.value().length : 0).sum();
        ByteBuffer part = ByteBuffer.allocate(2 + tags.size() * 12 + 4 + behind);
        part.putShort((short) tags.size());
        int free = at + 2 + tags.size() * 12 + 4;
        ByteArrayOutputStream values = new ByteArrayOutputStream();
        for (Tag tag : tags) {
            part.putShort((short) tag.id()).putShort((short) tag.type()).putInt(tag.count());
            if (tag.value().length > 4) {
                part.putInt(free + values.size());
                values.writeBytes(tag.value());
            } else {
                part.put(tag.value()).put(new byte[4 - tag.value().length]);
            }
        }
        return part.putInt(0).put(values.toByteArray()).array();
    }

    private static Tag text(int id, String text) {
        byte[] value = (text + "\0").getBytes(StandardCharsets.US_ASCII);
        return new Tag(id, ASCII, value.length, value);
    }

    private static Tag angle(int id, int minutes) {
        int whole = Math.abs(minutes);
        byte[] value =
                ByteBuffer.allocate(24)
                        .putInt(whole / 60)
                        .putInt(1)
                        .putInt(whole % 60)
                        .putInt(1)
                        .putInt(0)
                        .putInt(1)
                        .array();
        return new Tag(id, RATIONAL, 3, value);
    }

    private static byte[] number(int value) {
        return ByteBuffer.allocate(4).putInt(value).array();
    }
}
