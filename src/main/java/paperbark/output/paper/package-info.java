/**
 * Packs and print runs: templates become markup, the markup of all papers of a job becomes one PDF.
 *
 * <p>A {@link paperbark.output.CaseFile} and the template folder enter; bytes and findings leave.
 * Deliberately absent: writing files, the clock, the network, and any file outside the template
 * folder.
 */
package paperbark.output.paper;
