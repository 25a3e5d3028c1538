package witnessmark.document.page;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PlainNumber;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.document.OddsFactor;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.knowledge.Cause;
import witnessmark.language.Percent;
import witnessmark.language.Texts;

/** How texts, figures and times are said on the papers of one case: in its language and in the shop's units. */
final class SayOnPaper {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    /** Decibans from which a finding speaks against a cause loudly enough to be named: the odds change by a quarter. */
    static final double WORTH_SAYING_AGAINST = 1;

    private static final double SHORT = 10;

    /** Decibans below which a finding is silent on a class. */
    private static final double SILENT = 0.5;

    private final Texts texts;
    private final Texts layout;
    private final Units units;
    private final Map<String, Cause> causes;

    SayOnPaper(Dossier dossier) {
        this.texts = dossier.texts();
        this.layout = Texts.of("layout", texts.language());
        this.units = dossier.shop().units();
        this.causes = dossier.knowledge().causes();
    }

    String say(String key, Object... values) {
        return texts.text(key, values);
    }

    String percent(double probability) {
        return Percent.text(probability, texts);
    }

    /** The chance of a cause; empty where nothing can be told yet, since figures side by side would rank people. */
    String chanceOf(double probability, Verdict verdict) {
        return verdict.standing() == Verdict.Standing.UNDETERMINED ? "" : percent(probability);
    }

    /** A chance in words, no surer than the figure. */
    String chance(double probability) {
        if (probability >= 0.9) {
            return say("chance-very-likely");
        }
        if (probability >= 0.7) {
            return say("chance-likely");
        }
        if (probability >= 0.5) {
            return say("chance-rather");
        }
        return say(probability >= 0.1 ? "chance-possible" : "chance-unlikely");
    }

    /** A weight with its direction in a word, so that no sign or colour is needed to read it. */
    String weight(double decibans) {
        if (Math.abs(decibans) < SILENT) {
            return say("weight-silent");
        }
        return say(decibans > 0 ? "weight-for" : "weight-against", OddsFactor.text(Math.abs(decibans)));
    }

    /**
     * What speaks against a cause; of what is not there, that it would be expected or can come with it: an absence alone
     * reads as a doubt.
     */
    String against(RankedCause cause, RankedCause.Weight weight) {
        return weight.state() == FindingState.ABSENT
                ? say(isExpected(cause, weight) ? "against-absent" : "against-absent-at-times", weight.title())
                : weight.title() + " (" + state(weight.state()) + ")";
    }

    private boolean isExpected(RankedCause cause, RankedCause.Weight weight) {
        return Optional.ofNullable(causes.get(cause.id())).stream()
                .flatMap(c -> c.links().stream())
                .anyMatch(l -> l.isExpected() && l.finding().equals(weight.finding()));
    }

    /** How strongly a finding speaks, in words. */
    String strength(double decibans) {
        double size = Math.abs(decibans);
        return say(size >= 10 ? "strength-strongly" : size >= 4 ? "strength-clearly" : "strength-a-little");
    }

    String minutes(double minutes) {
        return minutes < 90
                ? Math.max(1, Math.round(minutes)) + " min"
                : String.format(Locale.ROOT, "%.1f h", minutes / 60).replace(".0 h", " h");
    }

    static String number(double value) {
        return PlainNumber.of(value);
    }

    /** A value in the shop's unit, with what was read behind it where that is another. */
    String value(double value, Unit unit) {
        String read = number(value) + " " + unit.symbol();
        return units.shown(unit) == unit ? read : say("as-read", units.read(value, unit), read);
    }

    /** A limit in the shop's unit, with what its owner wrote behind it where that is another. */
    String given(double value, Unit unit) {
        return units.given(value, unit);
    }

    /** A distance in the shop's unit alone. */
    String inUnits(double value, Unit unit) {
        return units.shown(unit) == unit ? number(value) + " " + unit.symbol() : units.read(value, unit);
    }

    /** A way that was reckoned, in the shop's unit, with a decimal only where it is short. */
    String rounded(double value, Unit unit) {
        double shown = unit.convert(value, units.shown(unit));
        return PlainNumber.rounded(shown, shown < SHORT ? 1 : 0) + " "
                + units.shown(unit).symbol();
    }

    /** A figure rounded as far as it is known, in the shop's units. */
    String figure(Figure figure) {
        return figure.text(units);
    }

    /** The text of this key; the words given where there is none. */
    String orElse(String key, String words) {
        return texts.has(key) ? texts.text(key) : words;
    }

    static String time(Instant time) {
        return TIME.format(time);
    }

    static String list(List<String> texts) {
        return String.join("; ", texts);
    }

    /** A feature of the gearbox. */
    String layoutWord(Enum<?> constant) {
        return layout.text(EnumWord.of(constant));
    }

    /** The word for how a finding was taken: present, absent or unsure. */
    String state(FindingState state) {
        return say("state-" + state.word());
    }
}
