package witnessmark.document.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.plan.CoachingCard;
import witnessmark.gearbox.plan.CoachingPoint;
import witnessmark.gearbox.plan.CoachingPoint.Topic;
import witnessmark.gearbox.plan.DrawUpCoachingCard;
import witnessmark.gearbox.speed.ShiftStep;
import witnessmark.language.Language;
import witnessmark.truck.ReadyTrucks;

class CoachingTextsTest {

    private static Properties bundle(String language) {
        Properties texts = new Properties();
        try (Reader in =
                Files.newBufferedReader(Path.of("src/main/resources/messages/coaching_" + language + ".properties"))) {
            texts.load(in);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return texts;
    }

    private static List<String> placeholders(String text) {
        return Pattern.compile("\\{[^}]*}")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .sorted()
                .toList();
    }

    @Test
    void every_language_says_every_text_with_the_same_figures() {
        Properties english = bundle("en");
        Properties spanish = bundle("es");

        assertThat(new TreeSet<>(spanish.stringPropertyNames()))
                .isEqualTo(new TreeSet<>(english.stringPropertyNames()));
        english.stringPropertyNames().forEach(key -> {
            assertThat(placeholders(spanish.getProperty(key)))
                    .as(key)
                    .isEqualTo(placeholders(english.getProperty(key)));
            assertThat(spanish.getProperty(key)).as(key).isNotBlank().isNotEqualTo(english.getProperty(key));
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "es"})
    void every_topic_has_its_words_and_its_reason(String language) {
        Properties texts = bundle(language);

        for (Topic topic : Topic.values()) {
            assertThat(texts).containsKeys(topic.key(), topic.reasonKey());
        }
        for (ShiftStep.Kind kind : ShiftStep.Kind.values()) {
            assertThat(texts)
                    .containsKey("drop-"
                            + kind.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
        }
    }

    @ParameterizedTest
    @EnumSource
    void no_card_is_left_with_an_empty_place_for_a_figure(Language language) {
        CoachingTexts words = CoachingTexts.in(language);
        CoachingCard oneGear = new DrawUpCoachingCard(TruckDraft.named("one-gear")
                        .mainRatios(List.of(1.0))
                        .set(Parameter.AXLE_RATIO, 4)
                        .set(Parameter.TYRE_REVS, 310)
                        .set(Parameter.GOVERNED_RPM, 2000)
                        .build())
                .card();

        Stream.concat(
                        ReadyTrucks.names().stream()
                                .map(name -> new DrawUpCoachingCard(ReadyTrucks.named(name)).card()),
                        Stream.of(oneGear))
                .forEach(card -> {
                    assertThat(card.points())
                            .extracting(point -> words.text(point) + words.reason(point))
                            .noneMatch(text -> text.contains("{"));
                    assertThat(card.drops()).extracting(words::drop).noneMatch(text -> text.contains("{"));
                });
        assertThat(words.startGears("L", "2")).contains("L").contains("2").doesNotContain("{");
    }

    /**
     * Thirteen ratios: ceiling 2000 x 60 / (3.84 x 3.7 x 312) = 27.07 km/h, 16.8 mph; never rounded up. By hand.
     */
    @Test
    void a_ceiling_is_rounded_down() {
        CoachingPoint point = new DrawUpCoachingCard(ReadyTrucks.named("thirteen-ratio"))
                .card().points().stream()
                        .filter(p -> p.topic() == Topic.LOW_RANGE_ONLY_UNDER_CEILING)
                        .findFirst()
                        .orElseThrow();

        assertThat(CoachingTexts.in(Language.ENGLISH).text(point))
                .isEqualTo("Take low range only under 27 km/h (16 mph).");
    }

    @Test
    void a_point_that_lacks_its_figure_is_said_plainly() {
        CoachingPoint bare = new CoachingPoint(Topic.SHIFT_PROGRESSIVELY, Map.of());

        assertThat(CoachingTexts.in(Language.ENGLISH).text(bare))
                .isEqualTo("Shift up early in the low gears, later in the high ones.");
    }
}
