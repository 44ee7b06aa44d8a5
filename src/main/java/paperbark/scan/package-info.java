/**
 * Piles of scanned pages: read, turned upright, told by their marks, and measured in the boxes
 * where people sign. Whether a signature is genuine is nobody's claim here. No file is written and
 * no ledger asked; lengths are floating point, because pixels are.
 */
package paperbark.scan;
