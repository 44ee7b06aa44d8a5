/** Paperbark: one register of jobs in, every paper out. */
package paperbark;
