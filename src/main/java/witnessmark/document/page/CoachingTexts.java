package witnessmark.document.page;

import java.util.Locale;
import java.util.Map;
import witnessmark.gearbox.EnumWord;
import witnessmark.gearbox.Figure;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.CoachingPoint;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.gearbox.speed.SpeedUnits;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/**
 * The texts of the coaching card in one language, from {@code messages/coaching_xx.properties}. A name in braces is
 * filled with the truck's own figure of that name.
 */
public final class CoachingTexts {

    private final Texts texts;

    private CoachingTexts(Texts texts) {
        this.texts = texts;
    }

    public static CoachingTexts in(Language language) {
        return new CoachingTexts(Texts.of("coaching", language));
    }

    /** The text of a key that takes no figure; throws where the bundle lacks it. */
    public String say(String key) {
        return texts.text(key);
    }

    /** What to do or not to do. */
    public String text(CoachingPoint point) {
        return filled(point.topic().key(), point.figures());
    }

    /** Why. */
    public String reason(CoachingPoint point) {
        return filled(point.topic().reasonKey(), point.figures());
    }

    /** How much engine speed to lose in one kind of upshift. */
    public String drop(CoachingCard.Drop drop) {
        String key = "drop-" + EnumWord.of(drop.kind());
        return say(key) + ": " + drop.onDial() + " rpm";
    }

    /** A step that cannot be shifted under way. */
    public String startAgain(ShiftStep gap) {
        return say("start-again")
                .replace("{from}", gap.from().id())
                .replace("{gear}", gap.to().id());
    }

    /** Lowest and highest gear to start in. */
    public String startGears(String lowest, String highest) {
        return lowest.equals(highest)
                ? lowest
                : say("start-gears").replace("{lowest}", lowest).replace("{highest}", highest);
    }

    /** The text with its figures; the plain text in its place where the truck lacks one of them. */
    private String filled(String key, Map<String, Figure> figures) {
        String text = say(key);
        for (Map.Entry<String, Figure> figure : figures.entrySet()) {
            text = text.replace("{" + figure.getKey() + "}", number(figure.getKey(), figure.getValue()));
        }
        return text.contains("{") ? say(key + "-plain") : text;
    }

    private static String number(String name, Figure figure) {
        if (figure.unit().quantity() == Unit.Quantity.SPEED) {
            return name.equals("ceiling") ? SpeedUnits.BOTH.limit(figure) : SpeedUnits.BOTH.whole(figure);
        }
        if (figure.unit() == Unit.RPM) {
            return rpm(figure);
        }
        return name.endsWith("-share")
                ? Math.round(100 * figure.value()) + " %"
                : String.format(Locale.ROOT, "%.1f", figure.value());
    }

    /** To fifty, as a dial is read. */
    private static String rpm(Figure figure) {
        return String.valueOf(CoachingCard.onDial(figure));
    }
}
