package paperbark.output.paper;

import paperbark.output.PaperKind;

/**
 * Where a paper lies in its pack.
 *
 * @param kind which paper
 * @param firstPage its first page in the pack, from 1
 * @param pageCount how many pages it takes, at least 1
 */
public record PaperPages(PaperKind kind, int firstPage, int pageCount) {}
