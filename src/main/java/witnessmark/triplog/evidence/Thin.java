package witnessmark.triplog.evidence;

import java.util.Locale;
import witnessmark.gearbox.EnumWord;

/**
 * Why what logs show is not enough to rest a conclusion on.
 *
 * @param figure the percent of the driving time in which a ratio fits, or the minutes that the logs cover; 0 for the
 *     reasons that have none
 */
public record Thin(Reason reason, double figure) {

    /** The reasons there are. */
    public enum Reason {
        /** A log among them may be of another truck or time. */
        DOUBTED,
        /** The ratios of the truck seldom fit. */
        RATIO_SELDOM_FITS,
        /** The one event is not sure. */
        EVENT_NOT_SURE,
        /** A habit shows more than once. */
        SEEN_ONCE,
        /** The logs cover too little. */
        SHORT;

        public String word() {
            return EnumWord.of(this);
        }
    }

    static Thin of(Reason reason) {
        return new Thin(reason, 0);
    }

    /** The figure without decimals. */
    public String number() {
        return String.format(Locale.ROOT, "%.0f", figure);
    }

    /** In words that go on from "too thin to rest a conclusion on: ". */
    public String words() {
        return switch (reason) {
            case DOUBTED -> "a log among them may be of another truck or time";
            case RATIO_SELDOM_FITS -> "a ratio fits in only " + number() + " % of the driving time";
            case EVENT_NOT_SURE -> "the one event is not sure";
            case SEEN_ONCE -> "seen once; a habit shows again";
            case SHORT -> "the logs cover " + number() + " min; add logs of more trips";
        };
    }
}
