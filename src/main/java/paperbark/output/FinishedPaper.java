package paperbark.output;

/**
 * A paper that comes as finished pages, such as a buyer's own form with the job's facts filled in.
 *
 * @param kind which paper of the pack it is
 * @param pdf its pages and nothing else; not to be changed
 * @param pageCount how many pages it has, at least 1
 * @param marked whether the scan mark of the pack is drawn onto its pages
 */
public record FinishedPaper(PaperKind kind, byte[] pdf, int pageCount, boolean marked) {}
