package witnessmark.diagnosis.fact;

import java.util.List;
import java.util.Optional;

/** Why a cause may not be concluded yet; each names what would release it. */
public sealed interface HoldReason {

    /** Neither the part itself nor the mark that goes with it was looked at; one of these would do. */
    record NotLookedAt(List<String> looks) implements HoldReason {
        public NotLookedAt {
            looks = looks.stream().sorted().toList();
        }
    }

    /**
     * Only marks were seen that other causes leave too, and no log or paper speaks for it.
     *
     * @param marks those seen
     * @param looks what would show it and is not answered yet
     */
    record MarkAlone(List<String> marks, List<String> looks) implements HoldReason {
        public MarkAlone {
            marks = marks.stream().sorted().toList();
            looks = looks.stream().sorted().toList();
        }
    }

    /** What would show it, or show it sound, was taken away before anybody looked. */
    record LookLost(List<String> looks, String by) implements HoldReason {
        public LookLost {
            looks = looks.stream().sorted().toList();
        }
    }

    /**
     * It stands only where this was looked at and found sound.
     *
     * @param found whether it was looked at and is not sound
     */
    record NotProvedGood(String finding, boolean found) implements HoldReason {}

    /** It stands on this found sound, and a repair is on record that may have renewed it before anybody looked. */
    record RenewalOpen(String good, String renewed) implements HoldReason {}

    /**
     * Another cause, somebody else's, would explain the parts as well, and was not looked at, or was seen to be there.
     *
     * @param instead chance of it on what the parts show, had this one not happened
     * @param seen whether a part shows the other that does not show this one
     * @param spokenFor whether it was so seen, or something bears witness of it alone
     * @param tells what tells the two apart, in words; empty where no pair of look-alikes says so
     * @param looks open findings that would close it
     */
    record RivalOpen(String other, double instead, boolean seen, boolean spokenFor, String tells, List<String> looks)
            implements HoldReason {
        public RivalOpen {
            looks = List.copyOf(looks);
        }

        @Override
        public boolean leavesNoDirection(boolean blames) {
            return blames && seen || spokenFor && instead >= RIVAL_STRONG;
        }
    }

    /**
     * Another cause, somebody else's, is there beside it or may be: what came of which is not told by the parts.
     *
     * @param shown whether it is as likely as a conclusion; else it is possible, and was not ruled out
     * @param looks open findings that would close it
     */
    record OwnersBeside(String other, boolean shown, List<String> looks) implements HoldReason {
        public OwnersBeside {
            looks = List.copyOf(looks);
        }

        @Override
        public boolean leavesNoDirection(boolean blames) {
            return shown;
        }
    }

    /** This was seen on the parts, it is not explained by it, and somebody else's cause leaves it. */
    record LeavesUnexplained(String finding) implements HoldReason {}

    /** Whose it is turns on this finding, which is not answered though there is reason to ask. */
    record OwnerOpen(String finding, String classId) implements HoldReason {}

    /** How a part came to be so was not asked at all, and whose it is turns on that; one of these would say something. */
    record WhyNotAsked(List<String> findings) implements HoldReason {
        public WhyNotAsked {
            findings = List.copyOf(findings);
        }
    }

    /** What was done is known, but others had it in hand then or it was ordered so. */
    record WhoseHands(String finding) implements HoldReason {}

    /** Two circumstances are known that name different owners of the same act. */
    record TwoOwners(List<String> findings) implements HoldReason {
        public TwoOwners {
            findings = findings.stream().sorted().toList();
        }
    }

    /** The log that shows it covers too little to show a habit. */
    record TooLittleLogged(String finding, String why) implements HoldReason {}

    /** It leans on evidence that contradicts itself. */
    record Contradicted(List<String> findings, String why) implements HoldReason {
        public Contradicted {
            findings = List.copyOf(findings);
        }
    }

    /** The evidence may not be from one unit. */
    record DoubtfulIdentity(String finding) implements HoldReason {}

    /** It is there, but nothing that the truck does is explained by it. */
    record ExplainsNothing(List<String> symptoms) implements HoldReason {
        public ExplainsNothing {
            symptoms = List.copyOf(symptoms);
        }
    }

    /**
     * Whether it leaves so much open that the evidence does not even point to the cause.
     *
     * @param blames whether the class of the cause names people: they are not pointed to by what is told or logged alone
     */
    default boolean leavesNoDirection(boolean blames) {
        return this instanceof Contradicted
                || this instanceof DoubtfulIdentity
                || this instanceof TwoOwners
                || blames
                        && (this instanceof NotLookedAt
                                || this instanceof MarkAlone
                                || this instanceof LookLost
                                || this instanceof LeavesUnexplained
                                || this instanceof WhoseHands
                                || this instanceof NotProvedGood good && good.found());
    }

    /** The first open look that would release the cause from it; empty where no look would. */
    default Optional<String> firstLook() {
        if (this instanceof NotLookedAt not) {
            return not.looks().stream().findFirst();
        }
        if (this instanceof MarkAlone alone) {
            return alone.looks().stream().findFirst();
        }
        if (this instanceof NotProvedGood good) {
            return good.found() ? Optional.empty() : Optional.of(good.finding());
        }
        if (this instanceof RenewalOpen renewal) {
            return Optional.of(renewal.renewed());
        }
        if (this instanceof RivalOpen rival) {
            return rival.looks().stream().findFirst();
        }
        if (this instanceof OwnersBeside beside) {
            return beside.looks().stream().findFirst();
        }
        return this instanceof OwnerOpen owner ? Optional.of(owner.finding()) : Optional.empty();
    }

    /** From this chance on a rival explains the parts so well that naming the cause would be choosing. */
    double RIVAL_STRONG = 0.5;
}
