package witnessmark.shell.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class JsonTest {
    private enum Side {
        LEFT_HAND
    }

    private record Inner(int count, Optional<String> note) {}

    private record Outer(
            @Json.Name("case") String id,
            @Json.Inlined Inner inner,
            @Json.Inlined Optional<Inner> none,
            @Nullable String said,
            Optional<Double> share,
            Side side,
            List<Inner> rows,
            Map<String, Boolean> flags) {}

    @Test
    void a_record_is_an_object_of_its_components() {
        Outer outer = new Outer(
                "c",
                new Inner(2, Optional.of("worn")),
                Optional.empty(),
                null,
                Optional.of(0.5),
                Side.LEFT_HAND,
                List.of(new Inner(1, Optional.empty())),
                Map.of("whole", true));

        assertThat(Json.of(outer))
                .isEqualTo("{\"case\":\"c\",\"count\":2,\"note\":\"worn\",\"said\":null,\"share\":0.5,"
                        + "\"side\":\"left-hand\",\"rows\":[{\"count\":1}],\"flags\":{\"whole\":true}}");
    }

    @Test
    void a_list_that_may_be_left_out_is_there_where_it_holds_something() {
        assertThat(Json.some(List.of())).isEmpty();
        assertThat(Json.some(List.of("a"))).contains(List.of("a"));
    }
}
