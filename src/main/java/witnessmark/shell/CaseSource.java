package witnessmark.shell;

import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.stereotype.Component;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;

/** Finds the case a command names: a YAML file on disk, or a case in the store. */
@Component
class CaseSource {

    /** The case; a name that ends in .yaml or .yml, or has a path in it, means a file. */
    CaseDocument find(String name) {
        if (isFile(name)) {
            Path file = Path.of(name);
            if (!Files.isRegularFile(file)) {
                throw new Refused("no case file '" + name + "'; give the path of a YAML case file, or the id of a"
                        + " stored case (see: case list)");
            }
            return new CaseReader().read(file);
        }
        throw new Refused("no case '" + name + "' is stored; see: case list");
    }

    /** Whether the name means a file and not a stored case. */
    static boolean isFile(String name) {
        return name.endsWith(".yaml") || name.endsWith(".yml") || name.contains("/") || name.contains("\\");
    }
}
