/** Other programs as readers of what Paperbark writes. */
package paperbark.outside;
