package witnessmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whoever reads a name knows which type is meant, whatever room he stands in. */
class SimpleNamesTest {

    @Test
    void a_simple_name_stands_for_one_type() throws IOException {
        Map<String, Long> files;
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            files = sources.map(path -> path.getFileName().toString())
                    .filter(name -> name.endsWith(".java") && !name.equals("package-info.java"))
                    .collect(Collectors.groupingBy(name -> name, TreeMap::new, Collectors.counting()));
        }
        assertThat(files).hasSizeGreaterThan(500);
        files.values().removeIf(count -> count == 1);
        assertThat(files).isEmpty();
    }
}
