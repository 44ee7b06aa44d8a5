/** The manual: its pages are made here while the program is built, and looked at. */
package paperbark.manual;
