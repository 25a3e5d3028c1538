package witnessmark.inference;

/** One step of a plan, run forward to sum the tables and backward for the slopes of the total by each weight. */
sealed interface Step {
    void forward(Sweep sweep);

    void backward(Sweep sweep);

    /** Starts a table of one vertex that has leaves hanging on it, or stands alone. */
    record Load(int vertex, int at) implements Step {
        @Override
        public void forward(Sweep s) {
            s.tape[at] = s.enter[2 * vertex];
            s.tape[at + 1] = s.enter[2 * vertex + 1];
        }

        @Override
        public void backward(Sweep s) {
            s.slopeByEnter[2 * vertex] = s.slopes[0];
            s.slopeByEnter[2 * vertex + 1] = s.slopes[1];
        }
    }

    /** Ends it: the vertex will enter the next table with its leaves in its weights. */
    record Store(int vertex, int at) implements Step {
        @Override
        public void forward(Sweep s) {
            s.enter[2 * vertex] = s.tape[at];
            s.enter[2 * vertex + 1] = s.tape[at + 1];
        }

        @Override
        public void backward(Sweep s) {
            s.slopes[0] = s.slopeByEnter[2 * vertex];
            s.slopes[1] = s.slopeByEnter[2 * vertex + 1];
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
