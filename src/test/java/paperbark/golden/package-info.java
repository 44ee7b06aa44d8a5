/** How packs look and read, held against what a person has looked at. */
package paperbark.golden;
