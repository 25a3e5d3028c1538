package witnessmark.document.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.document.ShippedFont;
import witnessmark.gearbox.Layout;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/** What is lettered in a drawing stands inside it, and no words run over others, in both languages. */
class WordsInDrawingsTest {
    private static final Pattern TEXT = Pattern.compile("<text([^>]*)>([^<]*)</text");
    private static final Pattern SIZE = Pattern.compile("font-size(?:=\"|:)([0-9.]+)");

    /** Pixels that a drawing has on a phone of 360, margins taken off. */
    private static final double ON_A_PHONE = 340;

    /** Pixels of letters that can be read on a phone; common practice. */
    private static final double LEGIBLE = 9;

    /** A line of letters: where it begins and ends. */
    private record Line(String text, double size, double left, double right, double y) {}

    private static List<Line> lines(String svg) {
        List<Line> lines = new ArrayList<>();
        Matcher text = TEXT.matcher(svg);
        while (text.find()) {
            String how = text.group(1);
            Matcher size = SIZE.matcher(how);
            double letters = size.find() ? Double.parseDouble(size.group(1)) : 12;
            double wide = ShippedFont.REGULAR.width(text.group(2), (float) letters);
            double left = at(how, "x")
                    - (how.contains("anchor=\"middle") ? wide / 2 : how.contains("anchor=\"end") ? wide : 0);
            lines.add(new Line(text.group(2), letters, left, left + wide, at(how, "y")));
        }
        return lines;
    }

    private static double at(String attributes, String name) {
        Matcher at = Pattern.compile(" " + name + "=\"([0-9.-]+)\"").matcher(attributes);
        assertThat(at.find()).isTrue();
        return Double.parseDouble(at.group(1));
    }

    private static void holds(List<Line> lines, double width) {
        assertThat(lines).isNotEmpty().allSatisfy(l -> {
            assertThat(l.left()).as(l.text()).isGreaterThanOrEqualTo(0);
            assertThat(l.right()).as(l.text()).isLessThanOrEqualTo(width);
        });
        for (Line one : lines) {
            assertThat(lines)
                    .filteredOn(l -> l != one && Math.abs(l.y() - one.y()) < 6)
                    .as(one.text())
                    .allMatch(l -> l.left() >= one.right() || l.right() <= one.left());
        }
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void the_gearbox(Language language) {
        Layout layout = new Layout(
                OptionalInt.of(18),
                Optional.of(Layout.RangeShift.AIR),
                Optional.of(Layout.Splitter.BOTH),
                Optional.of(Layout.Countershafts.TWIN),
                Optional.of(Layout.Linkage.DIRECT),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());

        String svg = DrawGearbox.draw(
                new GearboxPlan(layout, ShippedKnowledge.load().parts()), List.of(), Texts.of("document", language));

        holds(lines(svg), GearboxPlan.WIDTH);
        assertThat(lines(svg)).allSatisfy(l -> assertThat(l.size() * ON_A_PHONE / GearboxPlan.WIDTH)
                .as("letters of " + l.text())
                .isGreaterThanOrEqualTo(LEGIBLE));
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void the_causes_with_names_of_several_lines(Language language) {
        String name = "Remolcado con las ruedas motrices girando y las flechas puestas";
        List<RankedCause> causes = new ArrayList<>();
        for (int c = 0; c < 4; c++) {
            List<RankedCause.Weight> raise =
                    List.of(new RankedCause.Weight("a", "a", FindingState.PRESENT, 30 - 8 * c));
            List<RankedCause.Weight> lower = List.of(new RankedCause.Weight("b", "b", FindingState.ABSENT, -2));
            causes.add(new RankedCause(
                    "cause-" + c,
                    name,
                    "towing",
                    0.9 / (c + 1),
                    RankedCause.Standing.POSSIBLE,
                    false,
                    raise,
                    lower,
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of()));
        }

        List<Line> lines = lines(DrawCauses.draw(causes, Texts.of("document", language)));

        holds(lines, DrawCauses.WIDTH);
        String said = String.join(" ", lines.stream().map(Line::text).toList());
        assertThat(said).contains("puestas").doesNotContain("…", "...");
    }
}
