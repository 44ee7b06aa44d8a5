/**
 * One register from start to published folder: the order of work, the names of things, the
 * manifest.
 *
 * <p>What it publishes appears whole or not at all. Deliberately absent: the terminal, the clock
 * and the working directory, and any rule of the trade.
 */
package paperbark.batch;
