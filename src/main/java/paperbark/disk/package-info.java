/**
 * Files and folders on the disk: written whole, forced, moved by one rename, locked, named, hashed
 * and watched; and the files that the program brings along.
 *
 * <p>Whatever must survive a cut of power goes through here. Deliberately absent: what the files
 * mean.
 */
package paperbark.disk;
