package witnessmark.document;

import java.util.Optional;
import witnessmark.gearbox.Units;

/**
 * The shop whose papers these are.
 *
 * @param name as it stands on its papers; empty where it is not said
 * @param logo a picture, PNG, JPEG or SVG
 * @param units in which its papers are read
 */
public record Shop(String name, Optional<byte[]> logo, Units units) {
    public static final Shop UNNAMED = new Shop("", Optional.empty(), Units.BOTH);
}
