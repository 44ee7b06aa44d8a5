package paperbark.sheet;

import paperbark.finding.FindingCode;

/**
 * Something wrong with a cell, not yet a finding because only the owner of the column knows whether
 * it matters.
 *
 * @param code what kind of problem
 * @param fact what is wrong, one sentence
 * @param remedy what to do, one sentence; empty only for a note
 */
public record Trouble(FindingCode code, String fact, String remedy) {}
