package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.document.chart.Chart;
import witnessmark.document.chart.Chart.Point;
import witnessmark.document.chart.Chart.Series;
import witnessmark.document.chart.Chart.Style;

class TerminalChartTest {

    @Test
    void a_text_drawing_is_rough_but_to_scale() {
        Chart chart = new Chart(
                "A line",
                "x",
                "y",
                List.of(new Series("up", Style.FULL_LINE, List.of(new Point(0, 0), new Point(10, 5)))));

        assertThat(TerminalChart.draw(chart, 30, 10))
                .isEqualTo(
                        """
                        A line
                        y
                               5|                  ###
                                |              #####
                                |          #####
                               2|      #####
                                |  #####
                               0|###
                                +---------------------
                                 0                  10
                                 x
                                 # up
                        """);
    }
}
