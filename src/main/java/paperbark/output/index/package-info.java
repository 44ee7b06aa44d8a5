/**
 * The page that the admin opens first: every job with its status, certificates, what is missing and
 * links to its pack and findings.
 *
 * <p>A {@link paperbark.output.BatchView} enters, one self-contained HTML page leaves. Deliberately
 * absent: scripts, the network, bank details, telephone numbers and e-mail addresses, files, the
 * clock.
 */
package paperbark.output.index;
