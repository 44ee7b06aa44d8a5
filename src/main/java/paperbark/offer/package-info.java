/**
 * What the certificates are worth: the offer taken, GST, and the money expected.
 *
 * <p>Deliberately absent: files, the clock, floating point, and any netting of certificates against
 * GST.
 */
package paperbark.offer;
