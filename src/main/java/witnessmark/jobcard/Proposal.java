package witnessmark.jobcard;

import java.util.Optional;
import witnessmark.casefile.FindingState;
import witnessmark.gearbox.Unit;
import witnessmark.knowledge.Measure;

/** Something that a job card seems to say, to be accepted, changed or dropped. */
public sealed interface Proposal {
    /** The id of the finding or measure; of the odometer its name. */
    String id();

    /** The words of the card that it rests on. */
    String words();

    Sureness sureness();

    /** The same, not surer than this. */
    Proposal atBest(Sureness best);

    /**
     * A finding.
     *
     * @param saidBy whose words they are; empty where the shop itself found it
     * @param when gear and direction as the card says them, such as "3rd, uphill"; empty where it does not
     */
    record OfFinding(
            String id, FindingState state, String words, Sureness sureness, Optional<Sayer> saidBy, String when)
            implements Proposal {
        /** The same, told by this one where the card does not say by whom. */
        public OfFinding told(Sayer sayer) {
            return new OfFinding(id, state, words, sureness, saidBy.or(() -> Optional.of(sayer)), when);
        }

        /** The same, resting on the words of the other as well. */
        OfFinding and(OfFinding other) {
            String all = words.equals(other.words) ? words : words + " / " + other.words;
            return new OfFinding(id, state, all, sureness, saidBy, when.isEmpty() ? other.when : when);
        }

        @Override
        public OfFinding atBest(Sureness best) {
            return new OfFinding(id, state, words, sureness.atBest(best), saidBy, when);
        }

        OfFinding unsure() {
            return new OfFinding(id, FindingState.UNSURE, words, Sureness.DOUBTFUL, saidBy, when);
        }
    }

    /**
     * What the odometer shows.
     *
     * @param unit kilometre or mile, as written or as the shop reads it
     */
    record OfOdometer(double value, Unit unit, String words, Sureness sureness) implements Proposal {
        @Override
        public String id() {
            return "odometer";
        }

        @Override
        public OfOdometer atBest(Sureness best) {
            return new OfOdometer(value, unit, words, sureness.atBest(best));
        }

        public double km() {
            return Math.rint(unit.convert(value, Unit.KILOMETRE));
        }
    }

    /**
     * A value read.
     *
     * @param belief whether the value can be at all
     */
    record OfMeasure(String id, double value, Unit unit, Measure.Belief belief, String words, Sureness sureness)
            implements Proposal {
        @Override
        public OfMeasure atBest(Sureness best) {
            return new OfMeasure(id, value, unit, belief, words, sureness.atBest(best));
        }
    }
}
