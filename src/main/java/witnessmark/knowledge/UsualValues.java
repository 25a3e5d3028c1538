package witnessmark.knowledge;

import java.util.OptionalDouble;

/**
 * What a measure is read against where the manual of the unit gives no limit, in the measure's unit. Between the good
 * values and the bad ones nothing can be told.
 *
 * @param goodFrom lowest value that is good, empty where a low one tells nothing
 * @param goodTo highest value that is good, empty where a high one tells nothing
 * @param badUnder below it a value is bad, empty where no value is too low by itself
 * @param badOver above it a value is bad, empty where no value is too high by itself
 * @param from where the figures are from, in words; says so where that is common practice alone
 */
public record UsualValues(
        OptionalDouble goodFrom, OptionalDouble goodTo, OptionalDouble badUnder, OptionalDouble badOver, String from) {

    /** Such figures in another language. */
    UsualValues saidFrom(String other) {
        return new UsualValues(goodFrom, goodTo, badUnder, badOver, other);
    }
}
