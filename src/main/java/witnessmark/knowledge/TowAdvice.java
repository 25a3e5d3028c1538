package witnessmark.knowledge;

import java.util.List;

/**
 * A reminder for who moves a truck or its gearbox.
 *
 * @param ways of moving to which it belongs
 */
public record TowAdvice(
        String id, String english, String spanish, String whyEnglish, String whySpanish, List<TowWay> ways)
        implements Advice {
    public TowAdvice {
        ways = List.copyOf(ways);
    }
}
