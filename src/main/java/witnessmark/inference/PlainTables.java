package witnessmark.inference;

/** Weights as they are: fast, and exact as long as nothing underflows. */
final class PlainTables implements Tables {
    @Override
    public double one() {
        return 1;
    }

    @Override
    public double times(double one, double other) {
        return one * other;
    }

    @Override
    public double plus(double one, double other) {
        return one + other;
    }

    @Override
    public double acting(double strength) {
        return strength;
    }

    @Override
    public double failing(double strength) {
        return 1 - strength;
    }

    @Override
    public double weight(double logarithm) {
        return logarithm == 0 ? 1 : Math.exp(logarithm);
    }

    @Override
    public double logarithm(double weight) {
        return weight == 1 ? 0 : Math.log(weight);
    }

    @Override
    public void introduce(double[] table, int from, int to, int size, double weight0, double weight1) {
        for (int i = 0; i < size; i++) {
            table[to + i] = table[from + i] * weight0;
            table[to + size + i] = table[from + i] * weight1;
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
            table[k + explained] += table[k] * strength;
            table[k] *= 1 - strength;
        }
    }

    @Override
    public void forget(double[] table, int at, int size, int bit, double weight0, double weight1) {
        for (int i = 0; i < size >> 1; i++) {
            int k = at + Tables.spread(i, bit);
            table[at + i] = table[k] * weight0 + table[k + (1 << bit)] * weight1;
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
        double slope0 = 0;
        double slope1 = 0;
        for (int i = 0; i < size; i++) {
            slope0 += table[from + i] * slopes[i];
            slope1 += table[from + i] * slopes[size + i];
            slopes[i] = slopes[i] * weight0 + slopes[size + i] * weight1;
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
            slopes[k] = slopes[k] * (1 - strength) + slopes[k + explained] * strength;
        }
    }

    @Override
    public void forgetBack(double[] slopes, int size, int bit, double weight0, double weight1) {
        for (int i = (size >> 1) - 1; i >= 0; i--) {
            int k = Tables.spread(i, bit);
            double slope = slopes[i];
            slopes[k + (1 << bit)] = slope * weight1;
            slopes[k] = slope * weight0;
        }
    }
}
