package witnessmark.inference;

/**
 * The few operations on tables of weights over the states of some vertices, one bit each, and their transposes. No
 * operation subtracts weights, so nothing cancels.
 */
sealed interface Tables permits PlainTables, LogTables {
    /** The weight 1 in this arithmetic. */
    double one();

    double times(double one, double other);

    double plus(double one, double other);

    /** Weight of a link that acts, by its strength. */
    double acting(double strength);

    /** Weight of a link that fails to act, by its strength. */
    double failing(double strength);

    /** Weight in this arithmetic of a strength or any other plain number. */
    double weight(double logarithm);

    /** Natural logarithm of a weight. */
    double logarithm(double weight);

    /** Adds a vertex as highest bit: {@code size} weights at {@code from} become twice as many at {@code to}. */
    void introduce(double[] table, int from, int to, int size, double weight0, double weight1);

    /** Where the cause is present and the finding unexplained, the cause explains it with the given strength. */
    void activate(double[] table, int at, int size, int causeBit, int findingBit, double strength);

    /** Sums a vertex out: {@code size} weights at {@code at} become half as many. */
    void forget(double[] table, int at, int size, int bit, double weight0, double weight1);

    /**
     * Transpose of {@link #introduce}: {@code slopes} shrink from {@code 2 * size} to {@code size}; the slopes by
     * {@code weight0} and {@code weight1} are left at {@code result[at]} and {@code result[at + 1]}.
     */
    void introduceBack(
            double[] table,
            int from,
            int size,
            double[] slopes,
            double weight0,
            double weight1,
            double[] result,
            int at);

    /** Transpose of {@link #activate}. */
    void activateBack(double[] slopes, int size, int causeBit, int findingBit, double strength);

    /** Transpose of {@link #forget}: {@code slopes} grow from half of {@code size} to {@code size}. */
    void forgetBack(double[] slopes, int size, int bit, double weight0, double weight1);

    /** {@code index} with a 0 put in at {@code bit}. */
    static int spread(int index, int bit) {
        int low = index & ((1 << bit) - 1);
        return ((index ^ low) << 1) | low;
    }
}
