package witnessmark.truck;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import witnessmark.gearbox.QuestionRefused;
import witnessmark.gearbox.TruckProfile;

/** The invented trucks that come with the program, one for each usual layout. */
public final class ReadyTrucks {

    private static final List<String> NAMES = List.of("nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio");

    private ReadyTrucks() {}

    public static List<String> names() {
        return NAMES;
    }

    /** The YAML of a ready truck; throws with the names that there are. */
    public static String yaml(String name) {
        if (!NAMES.contains(name)) {
            throw new QuestionRefused(
                    "truck: '" + name + "' is not a ready example", "give one of " + String.join(", ", NAMES));
        }
        String path = "/trucks/" + name + ".yaml";
        try (InputStream in = ReadyTrucks.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + ": missing from the program; install it again");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(path + ": cannot be read", e);
        }
    }

    public static TruckProfile named(String name) {
        return TruckYaml.read(name + ".yaml", yaml(name));
    }
}
