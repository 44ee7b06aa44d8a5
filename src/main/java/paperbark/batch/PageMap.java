package paperbark.batch;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.PaperPages;
import paperbark.output.paper.SignBox;

/**
 * Which page of a batch's packs belongs to which paper, and where on it people write: what is asked
 * when signed pages come back. It tells of jobs by their numbers alone.
 *
 * @param batch name of the batch
 * @param jobs its packs
 */
public record PageMap(String batch, List<PackPages> jobs) {
    /** Name of the file in a batch folder. */
    public static final String FILE = "pages.json";

    private static final ObjectMapper JSON =
            new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    /** Keeps the list from being changed. */
    public PageMap {
        jobs = List.copyOf(jobs);
    }

    /**
     * The papers of one pack.
     *
     * @param job the job number
     * @param papers those in the pack, in order
     */
    @JsonIgnoreProperties("takenBack")
    public record PackPages(String job, List<PaperSpan> papers) {
        /** Keeps the list from being changed. */
        public PackPages {
            papers = List.copyOf(papers);
        }

        /** The paper that a page of the pack belongs to. */
        public Optional<PaperSpan> at(int packPage) {
            return papers.stream().filter(p -> p.has(packPage)).findFirst();
        }
    }

    /**
     * One paper.
     *
     * @param kind name of its kind
     * @param title its name for people
     * @param copy whether it is the owner's copy of another
     * @param signed whether it is to come back signed
     * @param first its first page in the pack, from 1
     * @param pages how many pages it has
     * @param unmarked whether its pages bear no scan mark, as a buyer's own form may; not told by
     *     earlier programs
     * @param boxes the boxes to write in
     */
    public record PaperSpan(
            String kind,
            String title,
            boolean copy,
            boolean signed,
            int first,
            int pages,
            @JsonInclude(JsonInclude.Include.NON_DEFAULT) boolean unmarked,
            List<SignBox> boxes) {
        /** Keeps the list from being changed. */
        public PaperSpan {
            boxes = List.copyOf(boxes);
        }

        private static PaperSpan of(FiledPack pack, PaperPages paper) {
            return new PaperSpan(
                    paper.kind().folder(),
                    paper.kind().title(),
                    paper.kind().isCopy(),
                    paper.kind().isSigned() && !paper.kind().isCopy(),
                    paper.firstPage(),
                    paper.pageCount(),
                    !paper.marked(),
                    pack.boxes().stream()
                            .filter(
                                    b ->
                                            b.packPage() >= paper.firstPage()
                                                    && b.packPage() <= paper.lastPage())
                            .toList());
        }

        /** Whether a page of the pack is one of its pages. */
        public boolean has(int packPage) {
            return packPage >= first && packPage < first + pages;
        }
    }

    /** The map of packs that were made. */
    static PageMap of(String batch, List<FiledPack> packs) {
        return new PageMap(batch, packs.stream().map(PageMap::of).toList());
    }

    private static PackPages of(FiledPack pack) {
        return new PackPages(
                pack.caseFile().job().reference(),
                pack.papers().stream()
                        .filter(p -> p.heldBy().isEmpty())
                        .map(p -> PaperSpan.of(pack, p))
                        .toList());
    }

    byte[] toJson() throws JsonProcessingException {
        return (JSON.writeValueAsString(this) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    /**
     * The map in a batch folder.
     *
     * @return empty where there is none, as in folders of earlier programs
     * @throws IOException when it cannot be read
     */
    public static Optional<PageMap> in(Path batch) throws IOException {
        Path file = batch.resolve(FILE);
        return Files.isRegularFile(file)
                ? Optional.of(JSON.readValue(Files.readAllBytes(file), PageMap.class))
                : Optional.empty();
    }

    /** The pack of a job, whether its number is written in large or small letters. */
    public Optional<PackPages> of(String job) {
        return jobs.stream().filter(j -> j.job().equalsIgnoreCase(job)).findFirst();
    }
}
