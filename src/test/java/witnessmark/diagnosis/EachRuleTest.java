package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static witnessmark.diagnosis.fact.ClassTurn.Weight.AGE;
import static witnessmark.diagnosis.fact.ClassTurn.Weight.RECORD;
import static witnessmark.diagnosis.fact.ClassTurn.Weight.SEEN;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.kie.api.event.rule.AfterMatchFiredEvent;
import org.kie.api.event.rule.DefaultAgendaEventListener;
import org.kie.api.runtime.KieSession;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Applies;
import witnessmark.diagnosis.fact.Believed;
import witnessmark.diagnosis.fact.Beside;
import witnessmark.diagnosis.fact.Breeds;
import witnessmark.diagnosis.fact.ClassChange;
import witnessmark.diagnosis.fact.ClassTurn;
import witnessmark.diagnosis.fact.Compared;
import witnessmark.diagnosis.fact.Contradiction;
import witnessmark.diagnosis.fact.Doubted;
import witnessmark.diagnosis.fact.DoubtsIdentity;
import witnessmark.diagnosis.fact.FromMeasurement;
import witnessmark.diagnosis.fact.GearSaid;
import witnessmark.diagnosis.fact.Given;
import witnessmark.diagnosis.fact.Ground;
import witnessmark.diagnosis.fact.HandsOpen;
import witnessmark.diagnosis.fact.HeldBack;
import witnessmark.diagnosis.fact.HoldReason.DoubtfulIdentity;
import witnessmark.diagnosis.fact.Instead;
import witnessmark.diagnosis.fact.Leans;
import witnessmark.diagnosis.fact.LookGone;
import witnessmark.diagnosis.fact.LooksAt;
import witnessmark.diagnosis.fact.MarkOf;
import witnessmark.diagnosis.fact.MayBeRenewed;
import witnessmark.diagnosis.fact.Measured;
import witnessmark.diagnosis.fact.MustBeGood;
import witnessmark.diagnosis.fact.MustBeGoodAny;
import witnessmark.diagnosis.fact.Needs;
import witnessmark.diagnosis.fact.NotApplicable;
import witnessmark.diagnosis.fact.NotByDefault;
import witnessmark.diagnosis.fact.OwnerMayTurn;
import witnessmark.diagnosis.fact.OwnerTurnsOn;
import witnessmark.diagnosis.fact.Reported;
import witnessmark.diagnosis.fact.Says;
import witnessmark.diagnosis.fact.Settled;
import witnessmark.diagnosis.fact.SpeaksAgainst;
import witnessmark.diagnosis.fact.SpoiledBy;
import witnessmark.diagnosis.fact.Suggests;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.diagnosis.fact.ThinLog;
import witnessmark.diagnosis.fact.UnexplainedMark;
import witnessmark.diagnosis.fact.Unexplaining;
import witnessmark.diagnosis.fact.Warns;
import witnessmark.diagnosis.fact.WhyItIsSo;
import witnessmark.diagnosis.fact.WitnessOf;
import witnessmark.diagnosis.fact.WouldShow;
import witnessmark.diagnosis.fact.Yields;
import witnessmark.gearbox.Layout;
import witnessmark.knowledge.Applicability;
import witnessmark.knowledge.ContextEffect;
import witnessmark.knowledge.ExplainedBy;
import witnessmark.knowledge.Finding.GearRole;
import witnessmark.knowledge.Follows;
import witnessmark.knowledge.MadeOf;
import witnessmark.knowledge.NeverTogether;
import witnessmark.knowledge.OneFact;
import witnessmark.language.Language;

/**
 * Every rule by its name: facts on which it must fire, and for each of its conditions facts that miss only that one, on
 * which it must not. A rule without both fails. What the rules say then is tested in {@link RulesTest}.
 */
class EachRuleTest {
    private static final RuleBase RULES = RuleBase.shipped();

    /** The facts a rule fires on, and for each condition what it does not fire on. */
    private record Example(List<Object> hit, Map<String, List<Object>> misses) {
        /** A near miss: one fact of the hit replaced by others, none to leave it out. */
        Example miss(String why, Object left, Object... instead) {
            assertThat(hit).as(why).contains(left);
            return other(
                    why,
                    Stream.concat(hit.stream().filter(f -> !f.equals(left)), Stream.of(instead))
                            .toList());
        }

        /** A near miss: what the hit has not, added. */
        Example spoilt(String why, Object... more) {
            return other(why, Stream.concat(hit.stream(), Stream.of(more)).toList());
        }

        private Example other(String why, List<Object> facts) {
            Map<String, List<Object>> all = new LinkedHashMap<>(misses);
            assertThat(all.put(why, facts)).as(why).isNull();
            return new Example(hit, all);
        }
    }

    private static Example hit(Object... facts) {
        return new Example(List.of(facts), Map.of());
    }

    private static Taken present(String finding) {
        return new Taken(finding, FindingState.PRESENT, Taken.AS_REPORTED);
    }

    private static Taken absent(String finding) {
        return new Taken(finding, FindingState.ABSENT, Taken.AS_REPORTED);
    }

    private static Taken unsure(String finding) {
        return new Taken(finding, FindingState.UNSURE, Taken.AS_REPORTED);
    }

    private static Believed cause(double probability) {
        return new Believed("c", "maintenance", false, probability, 1);
    }

    private static Believed habit(double probability) {
        return new Believed("c", "driver-habit", true, probability, 1);
    }

    private static Suggests text(Given.Kind kind) {
        return new Suggests("c", kind, "text", 1);
    }

    private static Measured bar(double value, @Nullable Double low, @Nullable Double high) {
        return new Measured("m", value, low, high, false, "bar", "the manual");
    }

    private static FromMeasurement shows(String measure, FindingState state) {
        return new FromMeasurement("f", state, measure, "why " + state);
    }

    private static Layout range(Layout.RangeShift kind) {
        return new Layout(
                OptionalInt.empty(),
                Optional.of(kind),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static final Yields BELOW = new Yields("m", Yields.Side.BELOW, "f");
    private static final Yields ABOVE = new Yields("m", Yields.Side.ABOVE, "f");
    private static final HeldBack HELD = new HeldBack("c", new DoubtfulIdentity("x"));
    private static final double WORD = Thresholds.WORTH_A_WORD;
    private static final Settled SETTLED = new Settled("g", FindingState.ABSENT, "x", false);

    private static Map<String, Example> measurement() {
        Map<String, Example> all = new LinkedHashMap<>();
        all.put(
                "below the low limit",
                hit(bar(1, 2.0, null), BELOW)
                        .miss("on the limit", bar(1, 2.0, null), bar(2, 2.0, null))
                        .miss("the other side", BELOW, ABOVE)
                        .miss("another measure", BELOW, new Yields("n", Yields.Side.BELOW, "f")));
        all.put(
                "not below the low limit",
                hit(bar(2, 2.0, 3.0), BELOW)
                        .miss("below", bar(2, 2.0, 3.0), bar(1.9, 2.0, 3.0))
                        .miss("no low limit", bar(2, 2.0, 3.0), bar(2, null, 3.0))
                        .miss("another measure", BELOW, new Yields("n", Yields.Side.BELOW, "f"))
                        .miss("the other side shows it", bar(2, 2.0, 3.0), bar(3.1, 2.0, 3.0), ABOVE));
        all.put(
                "above the high limit",
                hit(bar(4, null, 3.0), ABOVE)
                        .miss("on the limit", bar(4, null, 3.0), bar(3, null, 3.0))
                        .miss("the other side", ABOVE, BELOW)
                        .miss("another measure", ABOVE, new Yields("n", Yields.Side.ABOVE, "f")));
        all.put(
                "not above the high limit",
                hit(bar(3, 2.0, 3.0), ABOVE)
                        .miss("above", bar(3, 2.0, 3.0), bar(3.1, 2.0, 3.0))
                        .miss("no high limit", bar(3, 2.0, 3.0), bar(3, 2.0, null))
                        .miss("another measure", ABOVE, new Yields("n", Yields.Side.ABOVE, "f"))
                        .miss("the other side shows it", bar(3, 2.0, 3.0), bar(1.9, 2.0, 3.0), BELOW));
        all.put(
                "no limit given",
                hit(bar(3, null, null))
                        .miss("a low one", bar(3, null, null), bar(3, 2.0, null))
                        .miss("a high one", bar(3, null, null), bar(3, null, 4.0))
                        .spoilt("read otherwise", new Compared("m", Yields.Side.ABOVE, FindingState.ABSENT, "so")));
        Compared high = new Compared("m", Yields.Side.ABOVE, FindingState.PRESENT, "so");
        Compared left = new Compared("m", Yields.Side.ABOVE, FindingState.UNSURE, "so");
        all.put(
                "read without a limit",
                hit(high, ABOVE)
                        .miss("left open", high, left)
                        .miss("the other side", ABOVE, BELOW)
                        .miss("another measure", ABOVE, new Yields("n", Yields.Side.ABOVE, "f"))
                        .spoilt("reported", new Reported("f", FindingState.ABSENT)));
        all.put(
                "left open without a limit",
                hit(left, ABOVE)
                        .miss("told", left, high)
                        .miss("the other side", ABOVE, BELOW)
                        .miss("another measure", ABOVE, new Yields("n", Yields.Side.ABOVE, "f"))
                        .spoilt("reported", new Reported("f", FindingState.ABSENT))
                        .spoilt("measured otherwise", new FromMeasurement("f", FindingState.ABSENT, "n", "so")));
        Reported beside = new Reported("f", FindingState.PRESENT);
        all.put(
                "reported beside a reading without a limit",
                hit(high, ABOVE, beside)
                        .miss("the other side", ABOVE, BELOW)
                        .miss("another measure", ABOVE, new Yields("n", Yields.Side.ABOVE, "f"))
                        .miss("another finding", beside, new Reported("g", FindingState.PRESENT)));
        all.put(
                "limit on the other side",
                hit(bar(3, null, 4.0), BELOW)
                        .miss("the side that counts", bar(3, null, 4.0), bar(3, 2.0, null))
                        .miss("both sides", bar(3, null, 4.0), bar(3, 2.0, 4.0))
                        .miss("no limit at all", bar(3, null, 4.0), bar(3, null, null))
                        .miss("another measure", BELOW, new Yields("n", Yields.Side.BELOW, "f"))
                        .spoilt("both sides count", ABOVE));
        Reported good = new Reported("f", FindingState.ABSENT);
        Reported notProper = new Reported("proper", FindingState.ABSENT);
        Needs needs = new Needs("f", "proper");
        all.put(
                "check not done properly",
                hit(good, needs, notProper)
                        .miss("unsure already", good, new Reported("f", FindingState.UNSURE))
                        .miss("it needs something else", needs, new Needs("f", "other"))
                        .miss("done properly", notProper, new Reported("proper", FindingState.PRESENT))
                        .miss("nobody says", notProper));
        Reported washed = new Reported("washed", FindingState.PRESENT);
        SpoiledBy spoiled = SpoiledBy.whatever("f", "washed");
        all.put(
                "spoiled before the look",
                hit(good, spoiled, washed)
                        .miss("unsure already", good, new Reported("f", FindingState.UNSURE))
                        .miss("another finding", spoiled, SpoiledBy.whatever("g", "washed"))
                        .miss("only what is sound is in doubt", spoiled, SpoiledBy.ifSound("f", "washed"))
                        .miss("not washed", washed, new Reported("washed", FindingState.ABSENT)));
        all.put(
                "lost to what was done",
                hit(spoiled, present("washed"))
                        .miss("not washed", present("washed"), absent("washed"))
                        .miss("not known", present("washed"), unsure("washed"))
                        .miss("something else was done", spoiled, SpoiledBy.whatever("f", "drained")));
        SpoiledBy renewed = SpoiledBy.ifSound("f", "washed");
        all.put(
                "renewed before the look",
                hit(good, renewed, washed)
                        .miss("seen broken", good, new Reported("f", FindingState.PRESENT))
                        .miss("every answer is in doubt", renewed, spoiled)
                        .miss("not renewed", washed, new Reported("washed", FindingState.ABSENT)));
        all.put(
                "renewed before it was measured",
                hit(shows("m", FindingState.ABSENT), renewed, washed)
                        .miss("the value shows it", shows("m", FindingState.ABSENT), shows("m", FindingState.PRESENT))
                        .miss("every answer is in doubt", renewed, spoiled)
                        .miss("not renewed", washed, new Reported("washed", FindingState.UNSURE)));
        all.put(
                "taken as reported",
                hit(good)
                        .miss("nobody reported", good)
                        .spoilt("a measurement speaks of it", shows("m", FindingState.ABSENT))
                        .spoilt("the check is doubted", new Doubted("f", "why")));
        Doubted doubted = new Doubted("f", "why");
        all.put(
                "taken as unsure",
                hit(good, doubted)
                        .miss("no doubt", doubted)
                        .spoilt("a measurement speaks of it", shows("m", FindingState.PRESENT)));
        all.put(
                "taken from the measurement",
                hit(shows("m", FindingState.PRESENT))
                        .miss("no measurement", shows("m", FindingState.PRESENT))
                        .spoilt("another disagrees", shows("n", FindingState.ABSENT))
                        .spoilt("a report says the opposite", good));
        all.put(
                "measurements disagree",
                hit(shows("m", FindingState.PRESENT), shows("n", FindingState.ABSENT))
                        .miss("both show it", shows("n", FindingState.ABSENT), shows("n", FindingState.PRESENT))
                        .miss("both show it absent", shows("m", FindingState.PRESENT), shows("m", FindingState.ABSENT))
                        .miss(
                                "of another finding",
                                shows("n", FindingState.ABSENT),
                                new FromMeasurement("g", FindingState.ABSENT, "n", "why")));
        all.put(
                "report and measurement disagree",
                hit(shows("m", FindingState.PRESENT), good)
                        .miss("they agree", good, new Reported("f", FindingState.PRESENT))
                        .miss("the report is unsure", good, new Reported("f", FindingState.UNSURE))
                        .spoilt("the measurements disagree already", shows("n", FindingState.ABSENT)));
        return all;
    }

    private static Map<String, Example> consistency() {
        Map<String, Example> all = new LinkedHashMap<>();
        NeverTogether pair = new NeverTogether(List.of("f", "g"), false, "why");
        all.put(
                "never together",
                hit(pair, present("f"), present("g"))
                        .miss("one unsure", present("g"), unsure("g"))
                        .miss("one of them only", present("g"))
                        .miss("another pair", pair, new NeverTogether(List.of("f", "h"), false, "why")));
        Follows follows = new Follows("f", "g", true, "why");
        all.put(
                "what follows is missing",
                hit(follows, present("f"), absent("g"))
                        .miss("it is there", absent("g"), present("g"))
                        .miss("it follows as a rule only", follows, new Follows("f", "g", false, "why"))
                        .miss("it is unsure", absent("g"), unsure("g"))
                        .miss("the premise is unsure", present("f"), unsure("f"))
                        .miss("the other way round", follows, new Follows("g", "f", true, "why")));
        all.put(
                "settled without looking",
                hit(follows, absent("g"))
                        .miss("what follows is there", absent("g"), present("g"))
                        .miss("it follows as a rule only", follows, new Follows("f", "g", false, "why"))
                        .miss("the other way round", follows, new Follows("g", "f", true, "why"))
                        .spoilt("looked at", unsure("f")));
        all.put(
                "follows without looking",
                hit(follows, present("f"))
                        .miss("the premise is absent", present("f"), absent("f"))
                        .miss("the other way round", follows, new Follows("g", "f", true, "why"))
                        .spoilt("looked at", unsure("g")));
        all.put(
                "excluded without looking",
                hit(pair, present("f"))
                        .miss("the other is absent", present("f"), absent("f"))
                        .miss("two are open", pair, new NeverTogether(List.of("f", "g", "h"), false, "why"))
                        .spoilt("looked at", unsure("g")));
        ExplainedBy explained = new ExplainedBy("f", List.of("g", "h"), "why");
        all.put(
                "nothing explains it",
                hit(explained, present("f"), absent("g"), absent("h"))
                        .miss("one is there", absent("h"), present("h"))
                        .miss("one is open", absent("h"))
                        .miss("nothing to explain", present("f"), absent("f")));
        NotApplicable without = new NotApplicable(Applies.Subject.FINDING, "f", "it has none");
        all.put(
                "finding this gearbox cannot have",
                hit(without, present("f"))
                        .miss("found absent", present("f"), absent("f"))
                        .miss("a cause of that name", without, new NotApplicable(Applies.Subject.CAUSE, "f", "none"))
                        .miss("another finding", without, new NotApplicable(Applies.Subject.FINDING, "g", "none")));
        OneFact question = new OneFact(OneFact.Kind.QUESTION, "q", "which gear", List.of("f", "g"));
        all.put(
                "answered by another answer",
                hit(question, present("f"))
                        .miss(
                                "an act told again",
                                question,
                                new OneFact(OneFact.Kind.ACT, "q", "act", List.of("f", "g")))
                        .miss("answered no", present("f"), absent("f"))
                        .spoilt("looked at", absent("g")));
        GearSaid heard = new GearSaid("f", GearRole.HEARD_IN, "2");
        GearSaid seen = new GearSaid("g", GearRole.SEEN_ON, "3");
        all.put(
                "heard where the pair carries no load",
                hit(heard, seen, present("f"), present("g"))
                        .miss("the pair of that gear", seen, new GearSaid("g", GearRole.SEEN_ON, "2"))
                        .miss("the head pair", seen, new GearSaid("g", GearRole.SEEN_ON, "head"))
                        .miss("seen on both", heard, new GearSaid("f", GearRole.SEEN_ON, "2"))
                        .miss("not heard", present("f"), unsure("f"))
                        .miss("not seen", present("g"), absent("g")));
        return all;
    }

    private static Map<String, Example> context() {
        Map<String, Example> all = new LinkedHashMap<>();
        Layout mechanical = range(Layout.RangeShift.MECHANICAL);
        Applies toAir =
                new Applies(Applies.Subject.FINDING, "f", new Applicability(Map.of("range", Set.of("air")), 1, 32));
        all.put(
                "layout rules it out",
                hit(mechanical, toAir)
                        .miss("the layout has it", mechanical, range(Layout.RangeShift.AIR))
                        .miss("the layout is not known", mechanical, Layout.unknown()));
        ContextEffect onClass = new ContextEffect("f", Optional.of("towing"), Optional.empty(), 3, "why");
        ContextEffect onCause = new ContextEffect("f", Optional.empty(), Optional.of("c"), 3, "why");
        all.put(
                "circumstance for a class",
                hit(onClass, present("f"))
                        .miss("absent", present("f"), absent("f"))
                        .miss("unsure", present("f"), unsure("f"))
                        .miss("another circumstance", present("f"), present("g"))
                        .miss("it acts on a cause", onClass, onCause));
        all.put(
                "circumstance for a cause",
                hit(onCause, present("f"))
                        .miss("absent", present("f"), absent("f"))
                        .miss("another circumstance", present("f"), present("g"))
                        .miss("it acts on a class", onCause, onClass));
        SpeaksAgainst against = new SpeaksAgainst("c", "f", 0.3, "why");
        all.put(
                "finding speaks against",
                hit(against, present("f"))
                        .miss("absent", present("f"), absent("f"))
                        .miss("another finding", present("f"), present("g")));
        MadeOf made = new MadeOf("m", List.of("f", "g"), List.of("h"), List.of("u"));
        all.put(
                "made of other answers",
                hit(made, present("f"), present("g"), absent("h"), absent("u"))
                        .miss("one was not found", present("f"), absent("f"))
                        .miss("one cannot be told", present("g"), unsure("g"))
                        .miss("nobody looked for the one that must not be", absent("h"))
                        .miss("it is there", absent("h"), present("h"))
                        .miss("what takes it away is there", absent("u"), present("u"))
                        .spoilt("it was answered itself", new Reported("m", FindingState.ABSENT)));
        assertThat(fired(List.of(
                        new HandsOpen("m", "d"),
                        new Believed("d", "class", false, WORD, 1),
                        made,
                        present("f"),
                        present("g"),
                        absent("h"))))
                .as("what is made of others counts like what was found")
                .contains("whose hands");
        ClassTurn first = new ClassTurn("c", "f", "towing", 1, RECORD);
        ClassTurn second = new ClassTurn("c", "g", "assembly", 2, RECORD);
        all.put(
                "circumstance turns the class",
                hit(first, present("f"))
                        .miss("absent", present("f"), absent("f"))
                        .miss("it turns on nothing", first)
                        .miss("another circumstance", present("f"), present("g")));
        assertThat(fired(List.of(first, second, present("f"), present("g"))))
                .as("of two circumstances the first alone turns the class")
                .containsOnlyOnce("circumstance turns the class");
        return all;
    }

    private static Map<String, Example> guard() {
        Map<String, Example> all = new LinkedHashMap<>();
        LooksAt look = new LooksAt("c", "f");
        MarkOf own = new MarkOf("c", "f", true, false);
        MarkOf ordinary = new MarkOf("c", "f", false, false);
        WitnessOf witness = new WitnessOf("c", "w");
        WouldShow shown = new WouldShow("c", "f");
        all.put(
                "ground in the part",
                hit(cause(WORD), look, present("f"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("seen sound", present("f"), absent("f"))
                        .miss("a look at another cause", look, new LooksAt("d", "f")));
        all.put(
                "ground in its own mark",
                hit(cause(WORD), own, present("f"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("an ordinary mark", own, ordinary)
                        .miss("unsure", present("f"), unsure("f")));
        all.put(
                "ground in a mark beside a witness",
                hit(cause(WORD), ordinary, present("f"), witness, present("w"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("the witness is silent", present("w"), absent("w"))
                        .miss("no mark", present("f"), absent("f"))
                        .miss("a witness of another cause", witness, new WitnessOf("d", "w"))
                        .spoilt("a look would show it", new LooksAt("c", "l")));
        MarkOf figure = new MarkOf("c", "f", false, true);
        all.put(
                "ground in a figure beside a witness",
                hit(cause(WORD), figure, present("f"), witness, present("w"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("a trace, not a figure", figure, ordinary)
                        .miss("the witness is silent", present("w"), absent("w"))
                        .miss("within limits", present("f"), absent("f"))
                        .spoilt("the look told nothing", new LooksAt("c", "l"), unsure("l"))
                        .spoilt("the look is lost", new LooksAt("c", "l"), new LookGone("l", "renewed", true)));
        MustBeGood mustBeGood = new MustBeGood("c", "g");
        all.put(
                "ground in a mark by exclusion",
                hit(cause(WORD), ordinary, present("f"), mustBeGood)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("nothing to exclude", mustBeGood, new MustBeGood("d", "g"))
                        .miss("no mark", present("f"), unsure("f")));
        all.put(
                "neither part nor mark looked at",
                hit(cause(WORD), shown)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("it would show another cause", shown, new WouldShow("d", "f"))
                        .spoilt("it was seen", present("f"))
                        .spoilt("it is lost", new LookGone("f", "drained", false))
                        .spoilt("there is ground", new Ground("c")));
        LookGone lost = new LookGone("f", "drained", false);
        all.put(
                "what would show it is lost",
                hit(cause(WORD), shown, lost)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("another look is lost", lost, new LookGone("g", "drained", false))
                        .miss("it can still be found bad", lost, new LookGone("f", "renewed", true))
                        .spoilt("another look is left", new WouldShow("c", "g"))
                        .spoilt("there is ground", new Ground("c")));
        all.put(
                "nothing would show it",
                hit(cause(WORD))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .spoilt("a mark would", shown)
                        .spoilt("there is ground", new Ground("c")));
        all.put(
                "marks alone",
                hit(cause(WORD), shown, present("f"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("not seen", present("f"), absent("f"))
                        .spoilt("there is ground", new Ground("c")));
        ThinLog thin = new ThinLog("w", "half an hour");
        all.put(
                "log too thin",
                hit(cause(WORD), witness, thin, unsure("w"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("enough logged", thin)
                        .miss("the log carries", unsure("w"), present("w"))
                        .spoilt("another witness", new WitnessOf("c", "v"), present("v"))
                        .spoilt("the part was seen", look, present("f")));
        all.put(
                "not proved good",
                hit(cause(WORD), mustBeGood)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .spoilt("looked at and good", absent("g"))
                        .spoilt("looked at and not good", present("g"))
                        .spoilt("what was found settles it", SETTLED)
                        .spoilt("it is lost", new LookGone("g", "renewed", true))
                        .spoilt("this gearbox has none", new NotApplicable(Applies.Subject.FINDING, "g", "none")));
        all.put(
                "proof lost",
                hit(cause(WORD), mustBeGood, new LookGone("g", "renewed", true))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss(
                                "another look is lost",
                                new LookGone("g", "renewed", true),
                                new LookGone("h", "renewed", true))
                        .spoilt("looked at and good", absent("g"))
                        .spoilt("looked at and not good", present("g"))
                        .spoilt("what was found settles it", SETTLED)
                        .spoilt("this gearbox has none", new NotApplicable(Applies.Subject.FINDING, "g", "none")));
        all.put(
                "found not good",
                hit(cause(WORD), mustBeGood, present("g"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("it is good", present("g"), absent("g"))
                        .spoilt("itself a cause that was seen", new LooksAt("d", "g"))
                        .spoilt("this gearbox has none", new NotApplicable(Applies.Subject.FINDING, "g", "none")));
        assertThat(fired(List.of(habit(WORD), mustBeGood, present("g"), new LooksAt("d", "g"))))
                .as("a person is held back by it all the same")
                .contains("found not good");
        MayBeRenewed may = new MayBeRenewed("c", "g", "new", "repair");
        all.put(
                "sound since a repair",
                hit(habit(WORD), may, absent("g"), present("repair"))
                        .miss("hardly believed", habit(WORD), habit(WORD - 0.001))
                        .miss("it names nobody", habit(WORD), cause(WORD))
                        .miss("not sound", absent("g"), unsure("g"))
                        .miss(
                                "what was found settles it as there",
                                absent("g"),
                                new Settled("g", FindingState.PRESENT, "x", false))
                        .miss("no repair", present("repair"), absent("repair"))
                        .spoilt("known whether it is new", absent("new")));
        MustBeGoodAny any = new MustBeGoodAny("c", List.of("g", "h"));
        all.put(
                "none of the ways proved good",
                hit(cause(WORD), any)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("asked of another cause", any, new MustBeGoodAny("d", List.of("g", "h")))
                        .spoilt("one way proved", absent("h"))
                        .spoilt("what was found settles it", SETTLED)
                        .spoilt(
                                "no way left",
                                new LookGone("g", "drained", false),
                                new LookGone("h", "drained", false)));
        all.put(
                "every way of proof lost",
                hit(cause(WORD), any, new LookGone("g", "drained", false), new LookGone("h", "drained", false))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss(
                                "one way is left",
                                new LookGone("g", "drained", false),
                                new LookGone("x", "drained", false))
                        .spoilt("what was found settles it", SETTLED)
                        .spoilt("one way proved", absent("h")));
        all.put(
                "one of the ways found not good",
                hit(cause(WORD), any, present("h"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("asked of another cause", any, new MustBeGoodAny("d", List.of("g", "h")))
                        .miss("it is good", present("h"), absent("h"))
                        .miss("it cannot be told", present("h"), unsure("h"))
                        .spoilt("itself a cause that was seen", new LooksAt("d", "h")));
        assertThat(fired(List.of(habit(WORD), any, present("h"), new LooksAt("d", "h"))))
                .as("a person is held back by it all the same")
                .contains("one of the ways found not good");
        Instead instead = new Instead("c", "d", 0.3, false, false, "", List.of("g"));
        all.put(
                "rival not looked at",
                hit(cause(WORD), instead)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss(
                                "instead of another cause",
                                instead,
                                new Instead("e", "d", 0.3, false, false, "", List.of())));
        OwnerTurnsOn turns = new OwnerTurnsOn("c", "g", "f", "towing");
        all.put(
                "owner open",
                hit(cause(WORD), turns, present("f"), unsure("g"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("no reason to ask", present("f"), absent("f"))
                        .miss("answered", unsure("g"), absent("g"))
                        .spoilt("turned already", new ClassChange("c", "towing", "x")));
        OwnerMayTurn mayTurn = new OwnerMayTurn("c", "g", "wear-out", List.of("h"));
        all.put(
                "owner not asked",
                hit(habit(WORD), mayTurn, unsure("g"), present("x"))
                        .miss("hardly believed", habit(WORD), habit(WORD - 0.001))
                        .miss("of another cause", mayTurn, new OwnerMayTurn("d", "g", "wear-out", List.of("h")))
                        .miss("answered", unsure("g"), absent("g"))
                        .spoilt("it cannot be without what is not", absent("h"))
                        .spoilt("what is known excludes it", new NeverTogether(List.of("g", "x"), false, "why"))
                        .spoilt("not in this gearbox", new NotApplicable(Applies.Subject.FINDING, "g", "why"))
                        .spoilt("turned already", new ClassChange("c", "driver-habit", "x")));
        WhyItIsSo why = new WhyItIsSo("c", List.of("g"), List.of("g", "h"));
        all.put(
                "why it is so not asked",
                hit(cause(WORD), why, unsure("g"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("of another cause", why, new WhyItIsSo("d", List.of("g"), List.of("g", "h")))
                        .miss("answered", unsure("g"), absent("g"))
                        .spoilt("answered by another", present("h")));
        ClassTurn sought = new ClassTurn("c", "g", "wear-out", 1, RECORD);
        all.put(
                "owner cannot be told",
                hit(cause(WORD), sought, unsure("g"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("of another cause", sought, new ClassTurn("d", "g", "wear-out", 1, RECORD))
                        .miss("it would stay theirs", sought, new ClassTurn("c", "g", "maintenance", 1, RECORD))
                        .miss("it can be told", unsure("g"), absent("g"))
                        .spoilt(
                                "what counts before it is known",
                                new ClassTurn("c", "f", "assembly", 0, RECORD),
                                present("f")));
        OneFact who = new OneFact(OneFact.Kind.QUESTION, "who", "Who", List.of("f", "g"));
        ClassTurn turn = new ClassTurn("c", "f", "towing", 0, RECORD);
        all.put(
                "two owners",
                hit(cause(WORD), turn, who, present("f"), present("g"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("another cause turns", turn, new ClassTurn("d", "f", "towing", 0, RECORD))
                        .miss("the turn is not known", present("f"), absent("f"))
                        .miss("only one is known", present("g"), absent("g"))
                        .miss(
                                "two witnesses of one act",
                                who,
                                new OneFact(OneFact.Kind.ACT, "who", "Who", List.of("f", "g")))
                        .miss(
                                "another question",
                                who,
                                new OneFact(OneFact.Kind.QUESTION, "who", "Who", List.of("f", "h")))
                        .spoilt("both name the same", new ClassTurn("c", "g", "towing", 1, RECORD)));
        ClassTurn other = new ClassTurn("c", "g", "assembly", 1, RECORD);
        all.put(
                "another owner known as well",
                hit(cause(WORD), new ClassChange("c", "towing", "f"), turn, other, present("g"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("of another cause", other, new ClassTurn("d", "g", "assembly", 1, RECORD))
                        .miss("the same owner", other, new ClassTurn("c", "g", "towing", 1, RECORD))
                        .miss("it only tells the age", other, new ClassTurn("c", "g", "assembly", 1, AGE))
                        .miss("the first was seen", turn, new ClassTurn("c", "f", "towing", 0, SEEN))
                        .miss(
                                "the first was made of it",
                                turn,
                                new ClassTurn("c", "f", "towing", 0, RECORD, List.of("g")))
                        .miss("it is not so", present("g"), absent("g"))
                        .miss("it cannot be told", present("g"), unsure("g")));
        Contradiction contradiction = new Contradiction(List.of("f", "g"), "why");
        Leans leans = new Leans("c", "g", Thresholds.LEANING + 0.1);
        all.put(
                "contradiction open",
                hit(cause(WORD), contradiction, leans)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("it hardly leans on it", leans, new Leans("c", "g", Thresholds.LEANING))
                        .miss("nor against it", leans, new Leans("c", "g", -Thresholds.LEANING))
                        .miss("it leans on something else", leans, new Leans("c", "h", 9))
                        .miss("another cause leans on it", leans, new Leans("d", "g", 9)));
        all.put(
                "no blame on contradicted evidence",
                hit(habit(WORD), contradiction)
                        .miss("hardly believed", habit(WORD), habit(WORD - 0.001))
                        .miss("it names nobody", habit(WORD), cause(WORD))
                        .miss("nothing contradicts", contradiction));
        HandsOpen hands = new HandsOpen("f", "maintenance");
        all.put(
                "whose hands",
                hit(cause(WORD), hands, present("f"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("another class", hands, new HandsOpen("f", "other"))
                        .miss("another cause", hands, new HandsOpen("f", "d"))
                        .miss("not known", present("f"), absent("f")));
        NotByDefault common = new NotByDefault("f", "maintenance");
        all.put(
                "not by default",
                hit(cause(WORD), common, present("f"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("another class", common, new NotByDefault("f", "other"))
                        .miss("not known", present("f"), absent("f"))
                        .spoilt("a circumstance says so", new ClassChange("c", "maintenance", "g")));
        DoubtsIdentity doubts = new DoubtsIdentity("f");
        all.put(
                "identity in doubt",
                hit(cause(WORD), doubts, present("f"))
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("one unit", present("f"), absent("f"))
                        .miss("another finding", doubts, new DoubtsIdentity("g")));
        Beside beside = new Beside("c", "d", true, List.of());
        all.put(
                "another owner's cause beside it",
                hit(cause(Thresholds.LEADS), beside)
                        .miss("does not lead", cause(Thresholds.LEADS), cause(Thresholds.LEADS - 0.001))
                        .miss("beside another cause", beside, new Beside("e", "d", true, List.of())));
        UnexplainedMark left = new UnexplainedMark("c", "f");
        all.put(
                "a mark left unexplained",
                hit(habit(Thresholds.LEADS), left)
                        .miss("does not lead", habit(Thresholds.LEADS), habit(Thresholds.LEADS - 0.001))
                        .miss("it names nobody", habit(Thresholds.LEADS), cause(Thresholds.LEADS))
                        .miss("of another cause", left, new UnexplainedMark("d", "f")));
        Unexplaining unexplaining = new Unexplaining("c", List.of("f"));
        all.put(
                "explains nothing",
                hit(cause(WORD), unexplaining)
                        .miss("hardly believed", cause(WORD), cause(WORD - 0.001))
                        .miss("another cause", unexplaining, new Unexplaining("d", List.of("f"))));
        return all;
    }

    private static Map<String, Example> advice() {
        Map<String, Example> all = new LinkedHashMap<>();
        double repair = Thresholds.REPAIR_NOTES;
        double coaching = Thresholds.COACHING;
        all.put("repair notes", suggested(Given.Kind.REPAIR, repair));
        all.put("towing reminders", suggested(Given.Kind.TOWING, coaching));
        all.put("cautions", suggested(Given.Kind.CAUTION, coaching));
        all.put(
                "coaching points",
                hit(cause(coaching), text(Given.Kind.COACHING), new Ground("c"), HELD)
                        .miss("not likely", cause(coaching), cause(coaching - 0.001))
                        .miss("another kind of text", text(Given.Kind.COACHING), text(Given.Kind.TOWING))
                        .miss("another cause is held back", HELD, new HeldBack("d", new DoubtfulIdentity("x"))));
        all.put(
                "coaching points for an established habit",
                hit(cause(coaching), text(Given.Kind.COACHING), new Ground("c"))
                        .miss("not likely", cause(coaching), cause(coaching - 0.001))
                        .miss("another kind of text", text(Given.Kind.COACHING), text(Given.Kind.TOWING))
                        .spoilt("held back", HELD));
        Warns warns = new Warns("f", "caution", 1);
        all.put(
                "cautions of what was found",
                hit(warns, unsure("f"))
                        .miss("found sound", unsure("f"), absent("f"))
                        .miss("another finding", warns, new Warns("g", "caution", 1)));
        double both = Thresholds.BOTH_LIKELY;
        Believed second = new Believed("d", "assembly", false, both, 2);
        Breeds breeds = new Breeds("c", "d");
        all.put(
                "what came first",
                hit(cause(both), second, breeds)
                        .miss("the first is not likely", cause(both), cause(both - 0.001))
                        .miss("nor the second", second, new Believed("d", "assembly", false, both - 0.001, 2))
                        .miss("it breeds another", breeds, new Breeds("c", "e")));
        Says says = new Says("f", "text");
        all.put(
                "who decided it",
                hit(habit(Thresholds.LEADS), says, present("f"))
                        .miss("it does not lead", habit(Thresholds.LEADS), habit(Thresholds.LEADS - 0.001))
                        .miss("it names nobody", habit(Thresholds.LEADS), cause(Thresholds.LEADS))
                        .miss("not known", present("f"), unsure("f"))
                        .miss("another finding", says, new Says("g", "text")));
        return all;
    }

    private static Example suggested(Given.Kind kind, double from) {
        Given.Kind other = kind == Given.Kind.TOWING ? Given.Kind.COACHING : Given.Kind.TOWING;
        return hit(cause(from), text(kind))
                .miss("not likely", cause(from), cause(from - 0.001))
                .miss("another kind of text", text(kind), text(other))
                .miss("a text of another cause", text(kind), new Suggests("d", kind, "text", 1));
    }

    private static Map<String, Example> all() {
        Map<String, Example> all = new LinkedHashMap<>();
        List.of(measurement(), consistency(), context(), guard(), advice()).forEach(all::putAll);
        return all;
    }

    /** The names of the rules that fired, each as often as it did. */
    private static List<String> fired(List<Object> facts) {
        List<String> names = new ArrayList<>();
        KieSession session = RULES.newSession();
        session.setGlobal("say", new Sentences(Language.ENGLISH));
        session.addEventListener(new DefaultAgendaEventListener() {
            @Override
            public void afterMatchFired(AfterMatchFiredEvent event) {
                names.add(event.getMatch().getRule().getName());
            }
        });
        facts.forEach(session::insert);
        session.fireAllRules();
        session.dispose();
        return names;
    }

    @Test
    void every_rule_stands_here_with_a_hit_and_a_near_miss() {
        Map<String, Example> all = all();
        assertThat(all.keySet()).containsExactlyInAnyOrderElementsOf(RULES.names());
        assertThat(all)
                .allSatisfy(
                        (rule, example) -> assertThat(example.misses()).as(rule).isNotEmpty());
    }

    @TestFactory
    Stream<DynamicTest> each_rule_fires_on_its_facts() {
        return all().entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(
                        e.getKey(), () -> assertThat(fired(e.getValue().hit())).contains(e.getKey())));
    }

    @TestFactory
    Stream<DynamicTest> no_rule_fires_where_one_condition_is_missed() {
        return all().entrySet().stream().flatMap(e -> e.getValue().misses().entrySet().stream()
                .map(miss -> DynamicTest.dynamicTest(
                        e.getKey() + ": " + miss.getKey(),
                        () -> assertThat(fired(miss.getValue())).doesNotContain(e.getKey()))));
    }
}
