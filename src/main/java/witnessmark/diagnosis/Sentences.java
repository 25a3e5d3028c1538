package witnessmark.diagnosis;

import java.util.List;
import witnessmark.casefile.PlainNumber;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.diagnosis.fact.State;
import witnessmark.gearbox.Word;

/**
 * The sentences in which rules give their reasons. Ids stand in braces, {@code {finding:…}}, {@code {cause:…}},
 * {@code {measure:…}}, until {@link Titles} puts the titles in.
 */
public final class Sentences {
    private static final int MOST_NAMED = 4;

    private Sentences() {}

    public static String belowLimit(Measured m) {
        return reading(m) + (m.value() < m.low() ? ", below the low limit " : ", at the wear limit ") + number(m.low())
                + " " + m.unit() + from(m);
    }

    public static String aboveLimit(Measured m) {
        return reading(m) + (m.value() > m.high() ? ", above the high limit " : ", at the wear limit ")
                + number(m.high()) + " " + m.unit() + from(m);
    }

    public static String withinLimit(Measured m) {
        return reading(m) + ", within the limit" + from(m);
    }

    public static String noLimit(Measured m) {
        return reading(m) + ": no limit was given, so nothing follows from it; take the limit from the service manual"
                + " of this unit.";
    }

    public static String checkNotProper(String condition) {
        return "the check does not count: {finding:" + condition + "} was answered absent";
    }

    public static String takenAsUnsure(String finding, String why) {
        return "{finding:" + finding + "} is taken as unsure; " + why + ".";
    }

    public static String measurementsDisagree(String one, String other) {
        return "Two measurements disagree: " + one + "; " + other + ". Measure again.";
    }

    public static String reportAgainstMeasurement(State reported, String measured) {
        return "It was reported " + Word.of(reported) + ", but " + measured
                + ". Measure again and correct one of them.";
    }

    public static String carriesNoLoad(String gear, String pair) {
        return "It is heard in " + gearWord(gear) + ", in which " + pairWord(pair)
                + " carries no load: one of the two is of another gear, or of another unit.";
    }

    private static String gearWord(String gear) {
        return gear.equals("R") ? "reverse" : gear.equals("direct") ? "direct" : "gear " + gear;
    }

    private static String pairWord(String pair) {
        return pair.equals("head") ? "the head pair" : "the pair of " + gearWord(pair);
    }

    public static String spoiled(String spoiler) {
        return "it cannot be read any more: {finding:" + spoiler + "}";
    }

    /** Why "sound" says nothing of what was. */
    public static String renewed(String spoiler) {
        return "sound now says nothing of how it was: {finding:" + spoiler + "}";
    }

    /** Why a cause may not be concluded yet. */
    static String held(HoldReason reason) {
        if (reason instanceof HoldReason.NotLookedAt not) {
            return not.looks().isEmpty()
                    ? "nothing was looked at that shows it"
                    : "neither the part nor its mark was looked at: " + list(not.looks(), "or");
        }
        if (reason instanceof HoldReason.NotProvedGood good) {
            return "{finding:" + good.finding() + "}"
                    + (good.found()
                            ? " was found, and must be out of the way"
                            : " has not been looked at and found sound");
        }
        if (reason instanceof HoldReason.RivalOpen rival) {
            return "{cause:" + rival.other()
                    + (rival.seen()
                            ? "} was seen, and leaves the same marks"
                            : "} would leave the same marks and was not ruled out")
                    + (rival.tells().isEmpty() ? "" : ". " + withoutStop(rival.tells()))
                    + (rival.looks().isEmpty() ? "" : ". Look at: " + list(rival.looks(), "or"));
        }
        if (reason instanceof HoldReason.RenewalOpen renewal) {
            return "{finding:" + renewal.good() + "}: sound now, but a repair is on record; was it so before? {finding:"
                    + renewal.renewed() + "}";
        }
        if (reason instanceof HoldReason.OwnerOpen owner) {
            return "whose it is turns on this: {finding:" + owner.finding() + "}?";
        }
        if (reason instanceof HoldReason.TooLittleLogged log) {
            return "{finding:" + log.finding() + "} rests on too little to carry it: " + log.why();
        }
        if (reason instanceof HoldReason.Contradicted contradicted) {
            return "the evidence contradicts itself: " + contradicted.why();
        }
        if (reason instanceof HoldReason.DoubtfulIdentity doubt) {
            return "the evidence may not be from this unit: {finding:" + doubt.finding() + "}";
        }
        HoldReason.ExplainsNothing nothing = (HoldReason.ExplainsNothing) reason;
        return "it is there, but it does not explain " + list(nothing.symptoms(), "or");
    }

    /** What stands within a sentence of ours, which sets its own full stop. */
    private static String withoutStop(String sentence) {
        return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
    }

    private static String list(List<String> findings, String last) {
        List<String> titles = findings.stream()
                .limit(MOST_NAMED)
                .map(f -> "{finding:" + f + "}")
                .toList();
        int n = titles.size();
        return n == 1
                ? titles.get(0)
                : String.join(", ", titles.subList(0, n - 1)) + " " + last + " " + titles.get(n - 1);
    }

    public static String goesWith(String cause, double probability) {
        return "{cause:" + cause + "}, " + percent(probability)
                + (probability < Thresholds.CONCLUDED ? ": confirm before parts are ordered" : "");
    }

    public static String generalReminder() {
        return "general reminder; nothing is said about this driver";
    }

    public static String workOn(String cause) {
        return "work on: {cause:" + cause + "}";
    }

    public static String sinceFound(String finding) {
        return "because of: {finding:" + finding + "}";
    }

    public static String whatCameFirst(String first, String second) {
        return "{cause:" + first + "} can bring about {cause:" + second
                + "}: both are likely here, so ask which came first before either is called the cause.";
    }

    static String percent(double probability) {
        double percent = 100 * probability;
        if (percent < 1) {
            return "under 1 %";
        }
        return percent > 99 ? "over 99 %" : Math.round(percent) + " %";
    }

    private static String reading(Measured m) {
        return "{measure:" + m.measure() + "} read " + number(m.value()) + " " + m.unit();
    }

    private static String from(Measured m) {
        return m.limitFrom().isEmpty() ? "" : " (" + m.limitFrom() + ")";
    }

    private static String number(double value) {
        return PlainNumber.rounded(value, 3);
    }
}
