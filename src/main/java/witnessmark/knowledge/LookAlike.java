package witnessmark.knowledge;

import java.util.List;

/** Two causes that leave the same marks, and what tells them apart. */
public record LookAlike(String first, String second, List<String> checks, String tells, List<String> sources) {

    public boolean has(String cause) {
        return first.equals(cause) || second.equals(cause);
    }

    /** The cause on the other side; throws if {@code cause} is on neither. */
    public String other(String cause) {
        if (first.equals(cause)) {
            return second;
        }
        if (second.equals(cause)) {
            return first;
        }
        throw new IllegalArgumentException(cause + " is not one of " + first + ", " + second);
    }
}
