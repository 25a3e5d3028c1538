package witnessmark.casefile.yaml;

import java.util.Optional;
import java.util.function.Supplier;
import witnessmark.casefile.CaseRefused;
import witnessmark.yaml.YamlNode;

/** Builds parts of a case, a refusal becoming a fault at its place in the file. */
final class Built {
    private Built() {}

    /** What is built, or empty with a fault at the value if it is refused. */
    static <T> Optional<T> at(YamlNode where, Supplier<T> build) {
        try {
            return Optional.of(build.get());
        } catch (CaseRefused e) {
            where.fault(e.what(), e.mend());
        } catch (IllegalArgumentException e) {
            where.fault(String.valueOf(e.getMessage()), "correct it");
        }
        return Optional.empty();
    }
}
