package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.disk.Shipped;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;
import paperbark.output.workbook.TablesWorkbook;
import paperbark.sheet.TableFiles;

/**
 * What makes an office that of a real firm: its own tables as a workbook and an empty register, and
 * nothing of the sample firm.
 *
 * @param firm what it says of itself
 * @param logo a picture for the head of its papers; its ending says of which kind
 */
public record FirmOffice(NewFirm firm, Optional<Path> logo) {
    /** The empty register in an office. */
    public static final String REGISTER = "empty-register.xlsx";

    private static final String ASIDE = "sample-tables";

    /** The certificates that each state asks for are facts of the law and no sample. */
    private static final String OF_EVERY_FIRM = "state-papers";

    /** Why a file cannot be a logo, in a sentence; empty where it can. */
    public static Optional<String> pictureTrouble(Path file) {
        if (!ending(file).matches("png|svg")) {
            return Optional.of(file.getFileName() + " is no .png or .svg file.");
        }
        return Files.isRegularFile(file)
                ? Optional.empty()
                : Optional.of("There is no file " + file + ".");
    }

    private static String ending(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        return name.substring(name.lastIndexOf('.') + 1);
    }

    /** Writes what is not there yet; a sample that nobody touched is moved aside. */
    void write(Path office, OfficeFolder.Making making, List<String> made, List<String> kept)
            throws IOException {
        SortedMap<String, byte[]> samples = Shipped.below(Shipped.SAMPLES);
        if (isUntouchedSample(office, samples)) {
            moveAside(office, samples, made);
        }
        Path folder = office.resolve(OfficeFolder.TABLES);
        if (hasTables(office)) {
            kept.add(OfficeFolder.TABLES);
        } else {
            List<TableRows> tables = new ArrayList<>(firm.tables());
            tables.add(
                    TableRows.ofCsv(
                            OF_EVERY_FIRM,
                            samples.get(OfficeFolder.TABLES + OF_EVERY_FIRM + ".csv")));
            Disk.replace(
                    folder.resolve(TableFiles.WORKBOOK),
                    TablesWorkbook.of(TableDesk.completed(tables), TableDesk.words()));
            made.add(OfficeFolder.TABLES + TableFiles.WORKBOOK);
        }
        register(office, making.today(folder), made, kept);
        if (logo.isPresent()) {
            String name = "templates/logo." + ending(logo.get());
            boolean there = Files.exists(office.resolve(name));
            if (!there) {
                Disk.write(office.resolve(name), Files.readAllBytes(logo.get()));
            }
            (there ? kept : made).add(name);
        }
    }

    /** Tables that cannot be read yet make no register; {@code doctor} says what they lack. */
    private static void register(Path office, LocalDate today, List<String> made, List<String> kept)
            throws IOException {
        Path file = office.resolve(REGISTER);
        if (Files.exists(file)) {
            kept.add(REGISTER);
            return;
        }
        Optional<byte[]> empty =
                RegisterDesk.empty(office.resolve(OfficeFolder.TABLES), today).result();
        if (empty.isPresent()) {
            Disk.replace(file, empty.get());
            made.add(REGISTER);
        }
    }

    private static boolean hasTables(Path office) {
        Path folder = office.resolve(OfficeFolder.TABLES);
        return Files.exists(office.resolve(TableFiles.WORKBOOK))
                || Files.exists(folder.resolve(TableFiles.WORKBOOK))
                || TableGuide.all().stream()
                        .anyMatch(g -> Files.exists(folder.resolve(g.name() + ".csv")));
    }

    /** Whether every file of the sample firm's tables is there as it was written. */
    private static boolean isUntouchedSample(Path office, SortedMap<String, byte[]> samples)
            throws IOException {
        for (String name : samples.keySet()) {
            Path there = office.resolve(name);
            if (name.startsWith(OfficeFolder.TABLES)
                    && !(Files.isRegularFile(there)
                            && Arrays.equals(Files.readAllBytes(there), samples.get(name)))) {
                return false;
            }
        }
        return true;
    }

    private static void moveAside(Path office, SortedMap<String, byte[]> samples, List<String> made)
            throws IOException {
        Path aside = FileNames.free(office, ASIDE);
        List<String> names = new ArrayList<>(samples.keySet());
        names.add(OfficeFolder.MARK);
        names.add(OfficeFolder.SAMPLE_REGISTER);
        for (String name : names) {
            Path there = office.resolve(name);
            boolean ofOffice =
                    name.startsWith(OfficeFolder.TABLES)
                            || name.equals(OfficeFolder.SAMPLE_REGISTER);
            if (ofOffice && Files.isRegularFile(there)) {
                Path to = aside.resolve(name);
                Disk.makeFolders(to.getParent());
                Disk.move(there, to);
            }
        }
        Path rules = office.resolve(OfficeFolder.TABLES).resolve("rules");
        if (Files.isDirectory(rules) && isEmpty(rules)) {
            Disk.delete(rules);
        }
        made.add(aside.getFileName() + "/");
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (var all = Files.walk(folder)) {
            return all.noneMatch(Files::isRegularFile);
        }
    }
}
