package witnessmark.inference;

/** Weights as natural logarithms: slow, for evidence so far-fetched that plain weights would underflow. */
final class LogTables implements Tables {
    /** ln(e^a + e^b). */
    static double sum(double a, double b) {
        double larger = Math.max(a, b);
        if (larger == Double.NEGATIVE_INFINITY) {
            return larger;
        }
        return larger + Math.log1p(Math.exp(Math.min(a, b) - larger));
    }

    @Override
    public double one() {
        return 0;
    }

    @Override
    public double times(double one, double other) {
        return one + other;
    }

    @Override
    public double plus(double one, double other) {
        return sum(one, other);
    }

    @Override
    public double acting(double strength) {
        return Math.log(strength);
    }

    @Override
    public double failing(double strength) {
        return Math.log1p(-strength);
    }

    @Override
    public double weight(double logarithm) {
        return logarithm;
    }

    @Override
    public double logarithm(double weight) {
        return weight;
    }

    @Override
    public void introduce(double[] table, int from, int to, int size, double weight0, double weight1) {
        for (int i = 0; i < size; i++) {
            table[to + i] = table[from + i] + weight0;
            table[to + size + i] = table[from + i] + weight1;
        }
    }

    @Override
    public void activate(double[] table, int at, int size, int causeBit, int findingBit, double strength) {
        int low = Math.min(causeBit, findingBit);
        int high = Math.max(causeBit, findingBit);
        int present = at + (1 << causeBit);
        int explained = 1 << findingBit;
        for (int i = 0; i < size >> 2; i++) {
            int k = present + Tables.spread(Tables.spread(i, low), high);
            table[k + explained] = sum(table[k + explained], table[k] + Math.log(strength));
            table[k] += Math.log1p(-strength);
        }
    }

    @Override
    public void forget(double[] table, int at, int size, int bit, double weight0, double weight1) {
        for (int i = 0; i < size >> 1; i++) {
            int k = at + Tables.spread(i, bit);
            table[at + i] = sum(table[k] + weight0, table[k + (1 << bit)] + weight1);
        }
    }

    @Override
    public void introduceBack(
            double[] table,
            int from,
            int size,
            double[] slopes,
            double weight0,
            double weight1,
            double[] result,
            int at) {
        double slope0 = Double.NEGATIVE_INFINITY;
        double slope1 = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            slope0 = sum(slope0, table[from + i] + slopes[i]);
            slope1 = sum(slope1, table[from + i] + slopes[size + i]);
            slopes[i] = sum(slopes[i] + weight0, slopes[size + i] + weight1);
        }
        result[at] = slope0;
        result[at + 1] = slope1;
    }

    @Override
    public void activateBack(double[] slopes, int size, int causeBit, int findingBit, double strength) {
        int low = Math.min(causeBit, findingBit);
        int high = Math.max(causeBit, findingBit);
        int explained = 1 << findingBit;
        for (int i = 0; i < size >> 2; i++) {
            int k = (1 << causeBit) + Tables.spread(Tables.spread(i, low), high);
            slopes[k] = sum(slopes[k] + Math.log1p(-strength), slopes[k + explained] + Math.log(strength));
        }
    }

    @Override
    public void forgetBack(double[] slopes, int size, int bit, double weight0, double weight1) {
        for (int i = (size >> 1) - 1; i >= 0; i--) {
            int k = Tables.spread(i, bit);
            double slope = slopes[i];
            slopes[k + (1 << bit)] = slope + weight1;
            slopes[k] = slope + weight0;
        }
    }
}
