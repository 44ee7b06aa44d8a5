package paperbark.output;

import java.time.LocalDate;

/**
 * What all papers of a batch share.
 *
 * @param id name of the batch folder
 * @param register file name of the register
 * @param preparedOn day of the run
 * @param program version of Paperbark
 */
public record BatchInfo(String id, String register, LocalDate preparedOn, String program) {}
