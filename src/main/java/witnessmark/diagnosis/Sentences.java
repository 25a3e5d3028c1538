package witnessmark.diagnosis;

import java.util.List;
import java.util.stream.Collectors;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PlainNumber;
import witnessmark.diagnosis.fact.HoldReason;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.Applicability;
import witnessmark.knowledge.Measure;
import witnessmark.language.Language;
import witnessmark.language.Percent;
import witnessmark.language.Texts;
import witnessmark.triplog.evidence.Thin;

/**
 * The sentences of a judgement in one language; rules give their reasons in them. Ids stand in braces,
 * {@code {finding:…}}, {@code {cause:…}}, {@code {measure:…}}, until {@link Titles} puts the titles in.
 */
public final class Sentences {
    private static final int MOST_NAMED = 4;

    private final Texts texts;
    private final Texts layout;

    public Sentences(Language language) {
        this.texts = Texts.of("judgement", language);
        this.layout = Texts.of("layout", language);
    }

    /** The sentence of this key, with its places filled. */
    String say(String key, Object... values) {
        return texts.text(key, values);
    }

    public String belowLimit(Measured m) {
        return say(
                m.value() < m.low() ? "below-limit" : "at-low-limit",
                reading(m),
                number(m.asRead().low()),
                m.asRead().limitUnit(),
                from(m));
    }

    public String aboveLimit(Measured m) {
        return say(
                m.value() > m.high() ? "above-limit" : "at-low-limit",
                reading(m),
                number(m.asRead().high()),
                m.asRead().limitUnit(),
                from(m));
    }

    public String withinLimit(Measured m) {
        return say("within-limit", reading(m), from(m));
    }

    /** Why logs are too little to rest a conclusion on. */
    public String thin(Thin thin) {
        return say("thin-" + thin.reason().word(), thin.number());
    }

    /** What a value without a limit was read against, in words. */
    public String readAgainst(ReadSample sample) {
        return new SayReading(texts).against(sample);
    }

    /** What a value of this measure is read against where no limit is given; none where nothing is known. */
    public List<String> readWithoutLimit(Measure measure) {
        return new SayReading(texts).without(measure);
    }

    /** What such a value came to, in words. */
    public String readOutcome(ReadSample sample) {
        return new SayReading(texts).outcome(sample);
    }

    /** The whole sentence of such a value. */
    String readSample(ReadSample sample) {
        return say(
                "read-against",
                say(
                        "reading",
                        sample.measure().id(),
                        number(sample.read().value()),
                        sample.read().unit().symbol()),
                readAgainst(sample),
                readOutcome(sample));
    }

    /** That a value read without a limit gives way to what was reported. */
    public String reportedBeside(String why) {
        return say("reported-beside", why);
    }

    public String noLimit(Measured m) {
        return say("no-limit", reading(m));
    }

    public String limitOnOtherSide(Measured m) {
        return say(m.hasLow() ? "limit-is-least" : "limit-is-most", reading(m));
    }

    public String checkNotProper(String condition) {
        return say("not-proper", condition);
    }

    public String takenAsUnsure(String finding, String why) {
        return say("taken-as-unsure", finding, why);
    }

    /** What a circumstance that nobody was asked for is taken from. */
    public String madeOf(List<String> present, List<String> absent) {
        return absent.isEmpty() ? say("made-of", all(present)) : say("made-of-absent", all(present), all(absent));
    }

    public String twoDisagree() {
        return say("two-disagree");
    }

    public String measurementsDisagree(String one, String other) {
        return say("measurements-disagree", one, other);
    }

    public String reportDisagrees() {
        return say("report-disagrees");
    }

    public String reportAgainstMeasurement(FindingState reported, String measured) {
        return say("report-against-measurement", say("state-" + EnumWord.of(reported)), measured);
    }

    public String carriesNoLoad(String gear, String pair) {
        return say("carries-no-load", gearWord(gear), pairWord(pair));
    }

    private String gearWord(String gear) {
        return switch (gear) {
            case "R" -> say("gear-reverse");
            case "direct" -> say("gear-direct");
            default -> say("gear", gear);
        };
    }

    private String pairWord(String pair) {
        return pair.equals("head") ? say("pair-head") : say("pair", gearWord(pair));
    }

    /** Why something does not apply to the gearbox. */
    public String hasInstead(Applicability.Mismatch mismatch) {
        return mismatch.feature().isEmpty()
                ? say("has-ratios", mismatch.has())
                : say("has-instead", layout.text(mismatch.feature()), layout.text(mismatch.has()));
    }

    public String cannotBeFound(String why) {
        return say("cannot-be-found", why);
    }

    public String spoiled(String spoiler) {
        return say("spoiled", spoiler);
    }

    /** Why "sound" says nothing of what was. */
    public String renewed(String spoiler) {
        return say("renewed", spoiler);
    }

    /** Why a cause may not be concluded yet. */
    String held(HoldReason reason) {
        if (reason instanceof HoldReason.NotLookedAt not) {
            return not.looks().isEmpty()
                    ? say("held-nothing-looked-at")
                    : say("held-not-looked-at", either(not.looks()));
        }
        if (reason instanceof HoldReason.MarkAlone alone) {
            return say("held-mark-alone", either(alone.marks()));
        }
        if (reason instanceof HoldReason.LookLost lost) {
            return say("held-look-lost", either(lost.looks()), lost.by());
        }
        if (reason instanceof HoldReason.NotProvedGood good) {
            return say(good.found() ? "held-found" : "held-not-proved-good", good.finding());
        }
        if (reason instanceof HoldReason.RivalOpen rival) {
            return say(rival.seen() ? "held-rival-seen" : "held-rival-open", rival.other())
                    + (rival.tells().isEmpty() ? "" : say("held-rival-tells", withoutStop(rival.tells())))
                    + (rival.looks().isEmpty() ? "" : say("held-rival-looks", either(rival.looks())));
        }
        if (reason instanceof HoldReason.OwnersBeside beside) {
            return beside.shown()
                    ? say("held-shown-beside", beside.other())
                    : say("held-possible-beside", beside.other())
                            + (beside.looks().isEmpty() ? "" : say("held-rival-looks", either(beside.looks())));
        }
        if (reason instanceof HoldReason.LeavesUnexplained left) {
            return say("held-leaves-unexplained", left.finding());
        }
        if (reason instanceof HoldReason.RenewalOpen renewal) {
            return say("held-renewal", renewal.good(), renewal.renewed());
        }
        if (reason instanceof HoldReason.OwnerOpen owner) {
            return say("held-owner", owner.finding());
        }
        if (reason instanceof HoldReason.WhyNotAsked why) {
            return say("held-why", either(why.findings()));
        }
        if (reason instanceof HoldReason.WhoseHands hands) {
            return say("held-whose-hands", hands.finding());
        }
        if (reason instanceof HoldReason.TwoOwners two) {
            return say("held-two-owners", two.findings().get(0), two.findings().get(1));
        }
        if (reason instanceof HoldReason.TooLittleLogged log) {
            return say("held-thin-log", log.finding(), log.why());
        }
        if (reason instanceof HoldReason.Contradicted contradicted) {
            return say("held-contradicted", withoutStop(contradicted.why()));
        }
        if (reason instanceof HoldReason.DoubtfulIdentity doubt) {
            return say("held-identity", doubt.finding());
        }
        HoldReason.ExplainsNothing nothing = (HoldReason.ExplainsNothing) reason;
        return say("held-explains-nothing", either(nothing.symptoms()));
    }

    /** What stands within a sentence of ours, which sets its own full stop. */
    private static String withoutStop(String sentence) {
        return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
    }

    private static String all(List<String> findings) {
        return findings.stream().map(f -> "{finding:" + f + "}").collect(Collectors.joining("; "));
    }

    private String either(List<String> findings) {
        List<String> titles = findings.stream()
                .limit(MOST_NAMED)
                .map(f -> "{finding:" + f + "}")
                .toList();
        int n = titles.size();
        return n == 1
                ? titles.get(0)
                : String.join(", ", titles.subList(0, n - 1)) + " " + say("or") + " " + titles.get(n - 1);
    }

    public String goesWith(String cause, double probability) {
        return say(probability < Thresholds.CONCLUDED ? "goes-with-confirm" : "goes-with", cause, percent(probability));
    }

    public String generalReminder() {
        return say("general-reminder");
    }

    public String workOn(String cause) {
        return say("work-on", cause);
    }

    public String sinceFound(String finding) {
        return say("since-found", finding);
    }

    public String whatCameFirst(String first, String second) {
        return say("what-came-first", first, second);
    }

    String percent(double probability) {
        return Percent.text(probability, texts);
    }

    private String reading(Measured m) {
        return say(
                "reading", m.measure(), number(m.asRead().value()), m.asRead().unit());
    }

    private String from(Measured m) {
        return m.limitFrom().isEmpty() ? "" : say("limit-from", m.limitFrom());
    }

    private static String number(double value) {
        return PlainNumber.rounded(value, 3);
    }
}
