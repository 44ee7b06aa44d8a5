/**
 * The front door: words in, words out, an exit code. The only room that knows streams, the clock
 * and the working directory, and deliberately one without any rule of the trade.
 */
package paperbark.cli;
