package paperbark.office;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.rules.Dated;
import paperbark.rules.RuleTable;
import paperbark.rules.StateBoxRow;
import paperbark.value.Days;
import paperbark.value.State;

/**
 * Holds what cameras wrote into the pictures of a job against its day and site. A camera's clock
 * may be set to another zone of the earth, so a day more or less says nothing. Of the place only
 * the state is compared, because no finer map is at hand.
 */
final class PhotoCheck {
    /** What clocks of two zones may differ by. */
    private static final int MOST_DAYS = 1;

    private static final int LISTED = 3;
    private static final int HEAD = 1024;

    private final RuleTable<State, StateBoxRow> boxes;
    private final Map<String, Read> earlier;
    private final Map<String, Read> memory = new HashMap<>();

    private PhotoCheck(RuleTable<State, StateBoxRow> boxes, Map<String, Read> earlier) {
        this.boxes = boxes;
        this.earlier = earlier;
    }

    /** Holds places against these boxes. */
    static PhotoCheck with(RuleTable<State, StateBoxRow> boxes) {
        return new PhotoCheck(boxes, Map.of());
    }

    /** The same against these boxes, without reading again what this one has read. */
    PhotoCheck again(RuleTable<State, StateBoxRow> others) {
        return new PhotoCheck(others, Map.copyOf(memory));
    }

    /** A file that was read: what it tells, or what is wrong with it. */
    private record Read(Shot shot, String broken) {}

    /** A picture, and the day or place of it that contradicts. */
    private record Doubt(String name, String seen) {}

    private static List<String> inWords(List<Doubt> doubts) {
        return doubts.stream().map(d -> d.name() + " (" + d.seen() + ")").toList();
    }

    /**
     * What is known of a job.
     *
     * @param job the job number
     * @param installedOn the day of the installation; empty while it is only booked
     * @param state the state of the site, where its register tells
     */
    record About(String job, Optional<LocalDate> installedOn, Optional<State> state) {}

    /**
     * What came of the files of a job.
     *
     * @param findings what people should look at, one a kind of trouble
     * @param pictures how many photographs there are
     * @param withDay how many of them tell a day
     * @param withPlace how many of them tell a place
     * @param doubtful what contradicts day or place, by the picture's name
     */
    record Result(
            List<Finding> findings,
            int pictures,
            int withDay,
            int withPlace,
            Map<String, String> doubtful) {}

    /** Looks at the files; each is read once as long as it stays as it is. */
    Result of(About about, List<JobFile> files, LocalDate today) {
        List<String> broken = new ArrayList<>();
        List<Doubt> otherDay = new ArrayList<>();
        List<Doubt> otherPlace = new ArrayList<>();
        Optional<Dated<StateBoxRow>> box =
                about.state().flatMap(s -> boxes.on(about.installedOn().orElse(today), s));
        int pictures = 0;
        int withDay = 0;
        int withPlace = 0;
        for (JobFile file : files) {
            Read read = read(file);
            if (!read.broken().isEmpty()) {
                broken.add(file.name() + " (" + read.broken() + ")");
            } else if (file.isPhotograph()) {
                Shot shot = read.shot();
                pictures++;
                withDay += shot.day().isPresent() ? 1 : 0;
                withPlace += shot.spot().isPresent() ? 1 : 0;
                if (!file.isChecked()) {
                    shot.day()
                            .filter(day -> isOther(day, about.installedOn(), file))
                            .ifPresent(d -> otherDay.add(new Doubt(file.name(), Days.show(d))));
                    shot.spot()
                            .filter(s -> box.filter(b -> isOutside(b.row(), s)).isPresent())
                            .ifPresent(s -> otherPlace.add(new Doubt(file.name(), s.toString())));
                }
            }
        }
        List<Finding> findings = new ArrayList<>();
        if (!otherDay.isEmpty()) {
            findings.add(day(about, inWords(otherDay)));
        }
        if (!otherPlace.isEmpty()) {
            findings.add(place(about, inWords(otherPlace)).by(box.orElseThrow().ref()));
        }
        if (!broken.isEmpty()) {
            findings.add(broken(about.job(), broken));
        }
        return new Result(
                List.copyOf(findings),
                pictures,
                withDay,
                withPlace,
                doubtful(otherDay, otherPlace));
    }

    /** Both said of a picture that contradicts both. */
    private static Map<String, String> doubtful(List<Doubt> days, List<Doubt> places) {
        Map<String, String> all = new TreeMap<>();
        days.forEach(d -> all.put(d.name(), d.name() + " is of another day, " + d.seen()));
        places.forEach(
                d ->
                        all.merge(
                                d.name(),
                                d.name() + " is of another place, " + d.seen(),
                                (day, place) -> day + ", and of another place, " + d.seen()));
        return all;
    }

    private static boolean isOther(LocalDate day, Optional<LocalDate> installedOn, JobFile file) {
        if (installedOn.isEmpty()) {
            return false;
        }
        long days = ChronoUnit.DAYS.between(installedOn.get(), day);
        return days > MOST_DAYS || days < -MOST_DAYS && !file.isOfBefore();
    }

    private static boolean isOutside(StateBoxRow box, Shot.Spot spot) {
        return !box.holds(spot.south(), spot.east());
    }

    private static Finding day(About about, List<String> files) {
        return finding(
                FindingCode.PHOTO_OF_OTHER_DAY,
                about.job(),
                (files.size() == 1 ? "A picture was" : files.size() + " pictures were")
                        + " taken on another day than the installation of "
                        + about.installedOn().map(Days::show).orElseThrow()
                        + ", by the camera's clock: "
                        + list(files)
                        + ".",
                "Look whether this job is shown. What is right in spite of its day, put into a folder \""
                        + JobFile.CHECKED
                        + "\"; what shows the old heater earlier, into one named \"before\".");
    }

    private static Finding place(About about, List<String> files) {
        return finding(
                FindingCode.PHOTO_OF_OTHER_PLACE,
                about.job(),
                (files.size() == 1 ? "A picture was" : files.size() + " pictures were")
                        + " taken outside "
                        + about.state().orElseThrow()
                        + ", where the site of the job is: "
                        + list(files)
                        + ".",
                "Look whether this job is shown. What is right in spite of its place, put into a folder"
                        + " \""
                        + JobFile.CHECKED
                        + "\".");
    }

    private static Finding broken(String job, List<String> files) {
        return finding(
                FindingCode.PHOTO_UNREADABLE,
                job,
                (files.size() == 1 ? "A file" : files.size() + " files")
                        + " cannot be opened: "
                        + list(files)
                        + ".",
                "Copy it into photos/ once more from where it came.");
    }

    /** Of files that are of no job; empty where there are none. */
    static Optional<Finding> aside(List<JobFiles.Aside> aside) {
        if (aside.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                Finding.of(
                        FindingCode.PHOTO_OF_NO_JOB,
                        new Place.InFile("photos"),
                        (aside.size() == 1 ? "A file is" : aside.size() + " files are")
                                + " of no job for certain: "
                                + list(
                                        aside.stream()
                                                .map(a -> a.name() + " (" + a.why() + ")")
                                                .toList())
                                + ".",
                        "Put it into a folder that is named after its job, such as photos/SB-1032."));
    }

    private static String list(List<String> all) {
        List<String> first = all.subList(0, Math.min(LISTED, all.size()));
        int more = all.size() - first.size();
        return String.join(", ", first) + (more > 0 ? ", and " + more + " more" : "");
    }

    private static Finding finding(FindingCode code, String job, String fact, String remedy) {
        return Finding.of(code, new Place.InFile("photos"), fact, remedy).forJob(job);
    }

    private Read read(JobFile file) {
        String state;
        try {
            state = file.path() + " " + file.bytes() + Files.getLastModifiedTime(file.path());
        } catch (IOException vanished) {
            return new Read(Shot.SILENT, "not there any more");
        }
        return memory.computeIfAbsent(
                state, s -> Optional.ofNullable(earlier.get(s)).orElseGet(() -> readNow(file)));
    }

    private static Read readNow(JobFile file) {
        return switch (file.kind()) {
            case PICTURE -> picture(file);
            case PDF -> new Read(Shot.SILENT, isPdf(file) ? "" : "no PDF file");
            case OTHER -> new Read(Shot.SILENT, file.bytes() == 0 ? "empty" : "");
        };
    }

    private static Read picture(JobFile file) {
        try {
            return new Read(ShotReader.read(file), "");
        } catch (ShotReader.BrokenPicture e) {
            return new Read(Shot.SILENT, e.getMessage());
        }
    }

    private static boolean isPdf(JobFile file) {
        try (InputStream in = Files.newInputStream(file.path())) {
            return new String(in.readNBytes(HEAD), StandardCharsets.ISO_8859_1).contains("%PDF-");
        } catch (IOException e) {
            return false;
        }
    }
}
