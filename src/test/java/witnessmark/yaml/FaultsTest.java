package witnessmark.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class FaultsTest {
    private final Faults faults = new Faults();

    private void add(String file, int line, int column) {
        faults.add(new Fault(file, line, column, "is wrong", "mend it"));
    }

    @Test
    void they_are_told_file_by_file_in_the_order_of_the_lines_and_once_each() {
        add("b.yaml", 3, 1);
        add("a.yaml", 2, 7);
        add("b.yaml", 1, 5);
        add("b.yaml", 1, 2);
        add("b.yaml", 3, 1);
        add("a.yaml", 0, 0);

        assertThat(Told.by(faults))
                .containsExactly(
                        "b.yaml:1:2 is wrong; mend it",
                        "b.yaml:1:5 is wrong; mend it",
                        "b.yaml:3:1 is wrong; mend it",
                        "a.yaml is wrong; mend it",
                        "a.yaml:2:7 is wrong; mend it");
    }

    @Test
    void a_hundred_are_told_without_a_word_of_more() {
        for (int line = 1; line <= 100; line++) {
            add("a.yaml", line, 1);
        }
        add("a.yaml", 1, 1);

        assertThat(Told.by(faults)).hasSize(100).doesNotContain("more than");
    }

    @Test
    void after_a_hundred_it_is_told_that_there_are_more() {
        for (int line = 5_000; line > 0; line--) {
            add("a.yaml", line, 1);
        }

        List<String> told = Told.by(faults);

        assertThat(told).hasSize(101);
        assertThat(told.get(0)).isEqualTo("a.yaml:4901:1 is wrong; mend it");
        assertThat(told.get(100)).isEqualTo("a.yaml:5000:1 more than 100 faults; mend these first");
    }
}
