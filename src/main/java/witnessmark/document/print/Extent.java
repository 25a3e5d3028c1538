package witnessmark.document.print;

/**
 * How a piece of a page lies on sheets of paper.
 *
 * @param onLast how much of its last sheet it reaches down, 0 to 1
 */
record Extent(int sheets, double onLast) {}
