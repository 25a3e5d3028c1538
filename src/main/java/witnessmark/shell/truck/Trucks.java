package witnessmark.shell.truck;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.context.annotation.Lazy;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import witnessmark.gearbox.TruckProfile;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.truck.ReadyTrucks;
import witnessmark.truck.TruckFolder;
import witnessmark.truck.TruckYaml;
import witnessmark.yaml.Nearest;

/** Where commands find trucks: a YAML file on disk, a ready example, or the profiles kept beside the cases. */
@Component
@Lazy
public class Trucks {
    private final TruckFolder kept;

    Trucks(Environment environment) {
        kept = new TruckFolder(Cases.folder(environment).resolve("trucks"));
    }

    public TruckFolder kept() {
        return kept;
    }

    /** The truck; a name that ends in .yaml or .yml, or has a path in it, means a file. */
    public TruckProfile find(String name) {
        if (Cases.isFile(name)) {
            return read(Path.of(name)).truck();
        }
        if (ReadyTrucks.names().contains(name)) {
            return ReadyTrucks.named(name);
        }
        return kept.read(known(name));
    }

    /** The text of the profile as it was written. */
    public String yaml(String name) {
        if (Cases.isFile(name)) {
            return read(Path.of(name)).yaml();
        }
        return ReadyTrucks.names().contains(name) ? ReadyTrucks.yaml(name) : kept.yaml(known(name));
    }

    /** A profile that passed the check, and its text as it was written. */
    record Written(TruckProfile truck, String yaml) {}

    static Written read(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new Refused(
                    "no truck file '" + Terminal.harmless(file.toString()) + "'",
                    "give the path of a YAML truck" + " profile, or the name of a truck (see: truck list)");
        }
        String yaml = TruckFolder.text(file);
        return new Written(TruckYaml.read(file.getFileName().toString(), yaml), yaml);
    }

    List<String> names() {
        return Stream.concat(ReadyTrucks.names().stream(), kept.names().stream())
                .toList();
    }

    /** The name of a kept truck; throws with the nearest names where it is none. */
    String known(String name) {
        if (!kept.holds(name)) {
            List<String> near = Nearest.some(name, names(), 3);
            throw new Refused(
                    "no truck '" + Terminal.harmless(name) + "' is known",
                    (near.isEmpty() ? "see: truck list" : "did you mean " + String.join(", ", near) + "?"));
        }
        return name;
    }
}
