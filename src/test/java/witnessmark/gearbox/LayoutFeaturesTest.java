package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class LayoutFeaturesTest {
    @Property(tries = 300)
    void the_words_of_a_layout_name_that_layout_again(@ForAll("layouts") Layout layout) {
        assertThat(LayoutFeatures.layout(layout.forwardRatios(), LayoutFeatures.words(layout)))
                .isEqualTo(layout);
    }

    @Property(tries = 300)
    void every_word_is_among_those_allowed_for_its_feature(@ForAll("layouts") Layout layout) {
        LayoutFeatures.names().forEach(feature -> LayoutFeatures.word(layout, feature)
                .ifPresent(word -> assertThat(LayoutFeatures.allowed(feature)).containsKey(word)));
    }

    @Test
    void the_words_are_those_that_cases_and_knowledge_are_written_in() {
        assertThat(LayoutFeatures.names())
                .containsExactly("range", "splitter", "countershafts", "linkage", "oil-pump", "oil-cooler", "pto");
        assertThat(LayoutFeatures.allowed("splitter").keySet()).containsExactly("none", "high-only", "both");
        assertThat(LayoutFeatures.allowed("range").keySet()).containsExactly("none", "air", "mechanical");
        assertThat(LayoutFeatures.allowed("pto").keySet()).containsExactly("fitted", "none");
    }

    @Test
    void what_is_not_said_or_not_allowed_stays_open() {
        Layout layout = LayoutFeatures.layout(OptionalInt.empty(), Map.of("range", "steam", "linkage", "remote"));

        assertThat(layout.range()).isEmpty();
        assertThat(LayoutFeatures.word(layout, "linkage")).contains("remote");
        assertThatThrownBy(() -> LayoutFeatures.word(layout, "colour"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("no feature of a layout: colour");
    }

    @Provide
    Arbitrary<Layout> layouts() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 32).optional(),
                        some(Layout.RangeShift.class),
                        some(Layout.Splitter.class),
                        some(Layout.Countershafts.class),
                        some(Layout.Linkage.class),
                        some(Layout.Fitted.class),
                        some(Layout.Fitted.class),
                        some(Layout.Fitted.class))
                .as((ratios, range, splitter, shafts, linkage, pump, cooler, pto) -> new Layout(
                        ratios.map(OptionalInt::of).orElse(OptionalInt.empty()),
                        range,
                        splitter,
                        shafts,
                        linkage,
                        pump,
                        cooler,
                        pto));
    }

    private static <E extends Enum<E>> Arbitrary<Optional<E>> some(Class<E> set) {
        return Arbitraries.of(set).optional();
    }
}
