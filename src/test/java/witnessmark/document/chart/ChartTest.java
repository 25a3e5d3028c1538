package witnessmark.document.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;
import witnessmark.gearbox.Parameter;
import witnessmark.gearbox.SampleTrucks;
import witnessmark.gearbox.TruckDraft;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.plan.ShiftPlan;
import witnessmark.truck.ReadyTrucks;

class ChartTest {

    private static final TruckProfile TRUCK = ReadyTrucks.named("thirteen-ratio");

    private static Chart plan() {
        return ShiftPlanChart.of(TRUCK, ShiftPlan.of(TRUCK), ChartLabels.PLAIN);
    }

    private static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    @Test
    void the_saw_tooth_falls_at_every_shift_and_never_beyond_governed() {
        List<Point> teeth = plan().series().get(0).points();

        assertThat(teeth).hasSize(2 + 2 * 12);
        assertThat(teeth)
                .allSatisfy(p -> assertThat(p.y()).isLessThanOrEqualTo(TRUCK.value(Parameter.GOVERNED_RPM) + 1e-9));
        for (int i = 1; i + 1 < teeth.size(); i += 2) {
            assertThat(teeth.get(i + 1).x()).isCloseTo(teeth.get(i).x(), within(1e-9));
            assertThat(teeth.get(i + 1).y()).isLessThan(teeth.get(i).y());
        }
    }

    @Test
    void an_svg_is_one_well_formed_element_with_its_words_and_lines() throws Exception {
        String svg = DrawSvg.draw(plan(), 800, 450);
        Document document = parsed(svg);

        assertThat(svg).startsWith("<svg");
        assertThat(document.getDocumentElement().getAttribute("width")).isEqualTo("800");
        assertThat(document.getElementsByTagName("text").getLength()).isGreaterThan(10);
        assertThat(document.getDocumentElement().getTextContent())
                .contains("Progressive")
                .contains("Always at governed speed")
                .contains("Road speed, km/h")
                .contains("2000");
        assertThat(document.getElementsByTagName("path").getLength()).isGreaterThanOrEqualTo(2);
    }

    @Test
    void the_same_chart_gives_the_same_bytes() {
        assertThat(DrawSvg.draw(plan(), 800, 450)).isEqualTo(DrawSvg.draw(plan(), 800, 450));
    }

    @Test
    void words_from_outside_are_escaped() throws Exception {
        Chart chart = new Chart(
                "<b>&\"",
                "x",
                "y",
                List.of(new Series("<s>", Style.FULL_LINE, List.of(new Point(0, 0), new Point(1, 1)))));

        assertThat(parsed(DrawSvg.draw(chart, 300, 200)).getDocumentElement().getTextContent())
                .contains("<b>&\"");
    }

    @Test
    void slip_energy_grows_with_the_square_and_the_ceilings_stand_under_it() {
        Chart chart = SlipEnergyChart.of(TRUCK, TRUCK.gears().named("4"), ChartLabels.PLAIN);
        List<Point> points = chart.series().get(0).points();

        assertThat(chart.series())
                .extracting(Series::name)
                .containsExactly("From direct or split", "Ceiling of gear 4");
        assertThat(points.get(40).y()).isCloseTo(4 * points.get(20).y(), within(1e-9));
        assertThat(chart.notes())
                .singleElement()
                .asString()
                .startsWith("Low range, never above: L: ")
                .contains("; 4: ");
        assertThat(DrawSvg.draw(chart, 800, 450)).contains("never above");
    }

    /** An underdrive leaves the mainshaft faster than the auxiliary, so that the cone feels more of it. */
    @Test
    void from_an_underdrive_the_cone_takes_more() {
        TruckProfile under = SampleTrucks.splitHigh().splitter(1.18, false).build();

        Chart chart = SlipEnergyChart.of(under, under.gears().named("4"), ChartLabels.PLAIN);

        assertThat(chart.series())
                .extracting(Series::name)
                .containsExactly("From split", "From direct", "Ceiling of gear 4");
        assertThat(chart.series().get(0).points().get(40).y())
                .isGreaterThan(chart.series().get(1).points().get(40).y());
    }

    @Test
    void charts_without_substance_are_refused() {
        assertThatThrownBy(() -> new Chart("Empty", "x", "y", List.of()))
                .hasMessage("chart: 'Empty' has no series; give one or more");
        assertThatThrownBy(() -> new Series("none", Style.MARKS, List.of()))
                .hasMessage("chart: series 'none' has no points; leave it out");
        assertThatThrownBy(() -> SlipEnergyChart.of(TRUCK, TRUCK.gears().named("6d"), ChartLabels.PLAIN))
                .hasMessage("chart: gear 6d is not a forward gear of low range; give one that is");
    }

    /** The picture in README.md says what the program draws today: the same words, lines and marks. */
    @Test
    void the_picture_of_the_readme_is_todays() throws Exception {
        Document drawn = parsed(DrawSvg.draw(plan(), 800, 480));
        Document shown = parsed(Files.readString(Path.of("src/docs/pictures/shift-plan.svg")));

        assertThat(words(shown)).isEqualTo(words(drawn));
        for (String shape : List.of("path", "line", "circle")) {
            assertThat(shown.getElementsByTagName(shape).getLength())
                    .isEqualTo(drawn.getElementsByTagName(shape).getLength());
        }
    }

    private static String words(Document svg) {
        return svg.getDocumentElement().getTextContent().replaceAll("\\s+", " ").strip();
    }

    /** Low range's crawlers would be drawn as a shift that stalls the engine: the saw-tooth begins above them. */
    @Test
    void above_a_deep_reduction_the_saw_tooth_begins_anew() {
        TruckProfile truck = TruckDraft.named("crawler")
                .mainRatios(List.of(3.0, 2.0, 1.4, 1.0))
                .set(Parameter.LOW_RATIO, 12.0)
                .set(Parameter.RANGE_RATIO, 4)
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2000)
                .build();

        Chart chart = ShiftPlanChart.of(truck, ShiftPlan.of(truck), ChartLabels.PLAIN);

        assertThat(chart.series().get(0).points()).hasSize(2 + 2 * 7);
        assertThat(chart.notes()).first().isEqualTo("Gear L and below are for crawling and not drawn; start in 1");
    }
}
