package paperbark.scan;

import paperbark.output.PageMark;

/**
 * A mark that was read.
 *
 * @param mark what it says
 * @param pose how the page lies in the picture that it was read in
 */
record Found(PageMark mark, Pose pose) {}
