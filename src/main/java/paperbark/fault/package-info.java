/**
 * The points at which a run can be cut, the promises that it can be started without, and a record
 * of what it did to the disk, so that a test can prove that the others bite. Deliberately absent:
 * anything that acts unless the process was started for it.
 */
package paperbark.fault;
