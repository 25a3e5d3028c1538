package witnessmark.inference;

/** One step of a plan, run forward to sum the tables and backward for the slopes of the total by each weight. */
sealed interface Step {
    void forward(Sweep sweep);

    void backward(Sweep sweep);

    /**
     * A vertex with a single link is summed into its neighbour, which will enter its table with the leaf in its weights:
     * what entering, acting and leaving come to in a table of the two. The neighbour's weights before stay on the tape for
     * the way back.
     */
    record SumIn(int leaf, int onto, int at, boolean leafIsCause, double strength) implements Step {
        @Override
        public void forward(Sweep s) {
            Tables t = s.tables;
            double onto0 = s.enter[2 * onto];
            double onto1 = s.enter[2 * onto + 1];
            double leaf0 = s.enter[2 * leaf];
            double leaf1 = s.enter[2 * leaf + 1];
            s.tape[at] = onto0;
            s.tape[at + 1] = onto1;
            double only = t.times(onto1, leaf0);
            double leafOnly = t.times(onto0, leaf1);
            double both = t.times(onto1, leaf1);
            if (leafIsCause) {
                both = t.plus(both, t.times(leafOnly, t.acting(strength)));
                leafOnly = t.times(leafOnly, t.failing(strength));
            } else {
                both = t.plus(both, t.times(only, t.acting(strength)));
                only = t.times(only, t.failing(strength));
            }
            double leave0 = s.leave[2 * leaf];
            double leave1 = s.leave[2 * leaf + 1];
            s.enter[2 * onto] = t.plus(t.times(t.times(onto0, leaf0), leave0), t.times(leafOnly, leave1));
            s.enter[2 * onto + 1] = t.plus(t.times(only, leave0), t.times(both, leave1));
        }

        @Override
        public void backward(Sweep s) {
            Tables t = s.tables;
            double leave0 = s.leave[2 * leaf];
            double leave1 = s.leave[2 * leaf + 1];
            double slope0 = s.slopeByEnter[2 * onto];
            double slope1 = s.slopeByEnter[2 * onto + 1];
            double neither = t.times(slope0, leave0);
            double only = t.times(slope1, leave0);
            double leafOnly = t.times(slope0, leave1);
            double both = t.times(slope1, leave1);
            if (leafIsCause) {
                leafOnly = t.plus(t.times(leafOnly, t.failing(strength)), t.times(both, t.acting(strength)));
            } else {
                only = t.plus(t.times(only, t.failing(strength)), t.times(both, t.acting(strength)));
            }
            double leaf0 = s.enter[2 * leaf];
            double leaf1 = s.enter[2 * leaf + 1];
            s.slopeByEnter[2 * leaf] = t.plus(t.times(s.tape[at], neither), t.times(s.tape[at + 1], only));
            s.slopeByEnter[2 * leaf + 1] = t.plus(t.times(s.tape[at], leafOnly), t.times(s.tape[at + 1], both));
            s.slopeByEnter[2 * onto] = t.plus(t.times(neither, leaf0), t.times(leafOnly, leaf1));
            s.slopeByEnter[2 * onto + 1] = t.plus(t.times(only, leaf0), t.times(both, leaf1));
        }
    }

    /** A vertex enters; the old table stays on the tape for the way back. */
    record Introduce(int vertex, int from, int to, int size) implements Step {
        @Override
        public void forward(Sweep s) {
            s.tables.introduce(s.tape, from, to, size, s.enter[2 * vertex], s.enter[2 * vertex + 1]);
        }

        @Override
        public void backward(Sweep s) {
            s.tables.introduceBack(
                    s.tape,
                    from,
                    size,
                    s.slopes,
                    s.enter[2 * vertex],
                    s.enter[2 * vertex + 1],
                    s.slopeByEnter,
                    2 * vertex);
        }
    }

    /** A link acts. */
    record Activate(int at, int size, int causeBit, int findingBit, double strength) implements Step {
        @Override
        public void forward(Sweep s) {
            s.tables.activate(s.tape, at, size, causeBit, findingBit, strength);
        }

        @Override
        public void backward(Sweep s) {
            s.tables.activateBack(s.slopes, size, causeBit, findingBit, strength);
        }
    }

    /** A vertex leaves, all its links done. */
    record Forget(int vertex, int at, int size, int bit) implements Step {
        @Override
        public void forward(Sweep s) {
            s.tables.forget(s.tape, at, size, bit, s.leave[2 * vertex], s.leave[2 * vertex + 1]);
        }

        @Override
        public void backward(Sweep s) {
            s.tables.forgetBack(s.slopes, size, bit, s.leave[2 * vertex], s.leave[2 * vertex + 1]);
        }
    }
}
