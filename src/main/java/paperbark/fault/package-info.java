/**
 * The points at which a run can be cut, so that a test can cut it there. Deliberately absent:
 * anything that acts unless the process was started to be cut.
 */
package paperbark.fault;
