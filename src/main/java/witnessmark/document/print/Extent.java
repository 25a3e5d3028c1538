package witnessmark.document.print;

/**
 * How a piece of a page lies on sheets of paper.
 *
 * @param onFirst how far down its first sheet it begins, 0 to 1
 * @param onLast how much of its last sheet it reaches down, 0 to 1
 */
record Extent(int sheets, double onFirst, double onLast) {}
