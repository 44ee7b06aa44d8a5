package paperbark.output;

/**
 * A file of packs to print.
 *
 * @param file its name in the batch folder
 * @param label what it is, in words
 */
public record RunFile(String file, String label) {}
