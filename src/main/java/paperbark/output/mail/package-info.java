/**
 * Drafts of e-mail: files that a mail program opens with recipient, subject, text and attachments,
 * for a person to read and send.
 *
 * <p>Deliberately absent: anything that sends, the network, accounts and passwords of mail servers,
 * files, the clock.
 */
package paperbark.output.mail;
