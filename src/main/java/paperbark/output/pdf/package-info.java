/**
 * Documents as objects and bytes: page contents, tags and letters made small, a document written in
 * one pass, and many finished ones joined by moving their numbers (ISO 32000-1).
 *
 * <p>The objects of a finished document enter; bytes leave. Deliberately absent: what a page means,
 * templates, the layout, files and the clock.
 */
package paperbark.output.pdf;
