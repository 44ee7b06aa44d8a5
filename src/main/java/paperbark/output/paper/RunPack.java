package paperbark.output.paper;

import java.nio.file.Path;

/**
 * A pack in a print run.
 *
 * @param file the document
 * @param reference the job
 * @param place printed on its first page, e.g. {@code Job 7 of 40}
 * @param group the bookmark that it lies under, e.g. {@code Crew Heron}
 */
public record RunPack(Path file, String reference, String place, String group) {}
