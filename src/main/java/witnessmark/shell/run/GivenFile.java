package witnessmark.shell.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import witnessmark.shell.print.Refused;

/** Reads a file that was named on the line, of bounded size. */
public final class GivenFile {
    private GivenFile() {}

    public static byte[] read(Path file, int largest) {
        if (!Files.isRegularFile(file)) {
            throw new Refused("there is no file '" + file + "'", "check the name");
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(largest + 1);
            if (bytes.length > largest) {
                throw new Refused("'" + file + "' is larger than " + largest + " bytes", "make it smaller");
            }
            return bytes;
        } catch (IOException e) {
            throw new Refused("'" + file + "' cannot be read", "check that you may read it");
        }
    }
}
