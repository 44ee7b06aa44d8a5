/**
 * The program as people get it, unpacked from what the build made: tried after it was packaged, in
 * the phase {@code integration-test}.
 */
package paperbark.packaged;
