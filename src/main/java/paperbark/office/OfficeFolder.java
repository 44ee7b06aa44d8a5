package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import paperbark.disk.Disk;
import paperbark.disk.Rights;
import paperbark.disk.Shipped;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.output.paper.Guide;
import paperbark.sheet.TableFiles;

/**
 * Makes an office folder, or completes one. Whatever is there already stays as it is, to the byte.
 */
public final class OfficeFolder {
    /** Where a register waits to be prepared. */
    public static final String INTAKE = "intake";

    /** Where marked-up registers go back to. */
    public static final String RETURNED = "returned";

    /** The note beside a register that went back; it tells of cells, not of persons. */
    public static final String NOTE = "WHAT-TO-DO.txt";

    private static final List<String> FOLDERS =
            List.of(INTAKE, "scans", "photos", "packs", RETURNED, "filed", "templates", "tables");
    static final String TABLES = "tables/";
    static final String MARK = TABLES + "SAMPLE-TABLES.txt";
    static final String SAMPLE_REGISTER = "sample-register.xlsx";
    private static final String GUIDE = "guide.pdf";
    private static final String LEDGER = LedgerPlace.FILE;

    private final Path folder;
    private final List<String> made = new ArrayList<>();
    private final List<String> kept = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();

    private OfficeFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * What was done.
     *
     * @param made folders, which end in {@code /}, and files that are new
     * @param kept files that were there already
     * @param leftOut sample tables that were not put beside the firm's own
     */
    public record Result(List<String> made, List<String> kept, List<String> leftOut) {
        /** Keeps the lists from being changed. */
        public Result {
            made = List.copyOf(made);
            kept = List.copyOf(kept);
            leftOut = List.copyOf(leftOut);
        }
    }

    /**
     * When, where and by which program an office is made.
     *
     * @param at moment of making the ledger; the day printed on the guide is the office's
     * @param computers zone of the computer, where the tables name none
     * @param version of the program
     */
    public record Making(Instant at, ZoneId computers, String version) {
        /** The day it is in the office whose tables these are. */
        LocalDate today(Path tables) {
            return LocalDate.ofInstant(at, OfficeDay.zone(tables, computers));
        }
    }

    /**
     * Makes what is missing of an office folder.
     *
     * @param folder a folder that may exist
     * @param firm who the firm is; for none it is the sample firm's office
     * @throws IOException when a file or folder cannot be written; a second run completes it
     */
    public static Result setUp(Path folder, Optional<FirmOffice> firm, Making making)
            throws IOException {
        OfficeFolder office = new OfficeFolder(folder);
        office.folders();
        office.templates();
        office.file("photos/" + JobFiles.WORD, word());
        if (firm.isPresent()) {
            firm.get().write(folder, making, office.made, office.kept);
        } else {
            SortedMap<String, byte[]> samples = Shipped.below(Shipped.SAMPLES);
            office.tables(samples);
            office.file(SAMPLE_REGISTER, samples.get(Shipped.REGISTER));
        }
        office.ledger(making.at());
        office.guide(making.today(new Office(folder).tables()), making.version());
        return new Result(office.made, office.kept, office.leftOut);
    }

    private void folders() throws IOException {
        if (!Files.exists(folder)) {
            Disk.makeFolders(folder);
            // What lies here are people's bank details; who wants to share them says so.
            Rights.keepPrivate(folder);
        }
        for (String name : FOLDERS) {
            Path path = folder.resolve(name);
            if (!Files.isDirectory(path)) {
                Disk.makeFolders(path);
                made.add(name + "/");
            }
        }
    }

    private void templates() throws IOException {
        for (Map.Entry<String, byte[]> file : Shipped.below(Shipped.TEMPLATES).entrySet()) {
            // The pages are not the firm's: a changed copy would have no effect.
            if (!file.getKey().matches("(index\\.|status|week|scans|send|bundle|typing).*")) {
                file("templates/" + file.getKey(), file.getValue());
            }
        }
    }

    /** The sample firm's tables, as long as no table is the firm's own: never a mixture. */
    private void tables(SortedMap<String, byte[]> samples) throws IOException {
        SortedMap<String, byte[]> tables = new TreeMap<>(samples.tailMap(TABLES));
        tables.keySet().removeIf(name -> !name.startsWith(TABLES));
        tables.put(MARK, mark());
        boolean firmsOwn =
                Files.exists(folder.resolve("tables.xlsx"))
                        || Files.exists(folder.resolve(TABLES + TableFiles.WORKBOOK));
        for (Map.Entry<String, byte[]> table : tables.entrySet()) {
            Path there = folder.resolve(table.getKey());
            firmsOwn |=
                    Files.exists(there)
                            && !Arrays.equals(Files.readAllBytes(there), table.getValue());
        }
        for (Map.Entry<String, byte[]> table : tables.entrySet()) {
            if (firmsOwn && !Files.exists(folder.resolve(table.getKey()))) {
                leftOut.add(table.getKey());
            } else {
                file(table.getKey(), table.getValue());
            }
        }
    }

    /** A ledger is only ever made where no batch was published: a lost one must be brought back. */
    private void ledger(Instant at) throws IOException {
        LedgerPlace place = LedgerPlace.in(folder);
        if (place.isExpected()) {
            kept.add(place instanceof LedgerPlace.InFile ? LEDGER : LedgerPlace.NOTE);
            return;
        }
        if (hasBatches() || Witnesses.of(new Office(folder)).anyEntry().isPresent()) {
            leftOut.add(LEDGER);
            return;
        }
        boolean keyed = Files.exists(place.key());
        Ledger.create(place, at);
        made.add(LEDGER);
        (keyed ? kept : made).add(place.key().getFileName().toString());
    }

    private boolean hasBatches() throws IOException {
        return Office.list(folder.resolve("packs")).stream()
                .anyMatch(b -> Files.exists(b.resolve("manifest.json")));
    }

    private void guide(LocalDate today, String version) throws IOException {
        if (Files.exists(folder.resolve(GUIDE))) {
            kept.add(GUIDE);
        } else {
            file(GUIDE, Guide.of(Optional.of(folder.resolve("templates")), today, version));
        }
    }

    private void file(String name, byte[] content) throws IOException {
        Path target = folder.resolve(name);
        if (Files.exists(target)) {
            kept.add(name);
            return;
        }
        Disk.makeFolders(target.getParent());
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        try {
            // Whole or absent; and a move without the word to replace leaves what appeared
            // meanwhile.
            Files.write(part, content);
            Rights.ofFolderAround(part);
            Files.move(part, target);
        } finally {
            Files.deleteIfExists(part);
        }
        made.add(name);
    }

    private static byte[] word() {
        return """
                PHOTOGRAPHS, CERTIFICATES AND RECEIPTS OF YOUR JOBS GO HERE.

                Either into a folder that is named after the job:   SB-1032/tank.jpg
                or anywhere here, with the job's number in the name: SB-1032 plumbing certificate.pdf

                Words in a name, or a folder's, that count:
                certificate, compliance    a certificate; with "plumbing" or "electrical" it tells which
                receipt, scrap             a receipt, such as that for the old heater
                before, old                a picture of what was there before the work
                checked (a folder)         pictures that you have looked at; nothing is asked of them again

                Files here are read and never changed. "paperbark photos" and the page of the week say
                what is missing, and which pictures are of another day or state. "forget" deletes the
                files of its job. What lies here shows people's houses: it is as private as a register.
                """
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] mark() {
        return """
                THESE ARE THE TABLES OF A SAMPLE FIRM. All of it is invented.

                They are here so that sample-register.xlsx can be tried at once. Before your first real
                week, replace every row by your own, in this order:

                firm.csv          your name, ABN, address, telephone, bank account, warranty on your work
                people.csv        your plumbers and electricians with their licences, state by state
                makers.csv        the makers whose heaters you put in, as their papers name them
                products.csv      their models as listed on the day of installation
                buyers.csv        who takes your certificates, and which form they want
                offers.csv        what they pay, with first and last day
                accounts.csv      what your books call their accounts; without it there is no journal
                sellers.csv       who sells the heaters, where that is not you
                columns.csv       the headings of your list and which of our fields each one is
                advice-columns.csv  the headings of your buyers' payment advices
                words.csv         your own words for stages, old heaters, yes and no: may be deleted
                rules/            factors for Victorian certificates: INVENTED; put in those of the
                                  Specifications, or delete the folder
                state-papers.csv  the certificates each state asks for: stays, if it fits

                Then delete this file. As long as it lies here unchanged beside unchanged tables, a second
                "setup" takes the tables for samples.
                """
                .getBytes(StandardCharsets.UTF_8);
    }
}
