package witnessmark.casefile.yaml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;
import witnessmark.casefile.CaseRefused;

/** The faults of one file as they are found; reading goes on after each, so that all of them are told at once. */
final class FaultList {
    private static final int MOST = 100;

    private final String file;
    private final List<Fault> faults = new ArrayList<>();

    FaultList(String file) {
        this.file = file;
    }

    void add(Node where, String what, String mend) {
        add(line(where), where.getStartMark().map(Mark::getColumn).orElse(0) + 1, what, mend);
    }

    void add(int line, int column, String what, String mend) {
        faults.add(new Fault(file, line, column, what, mend));
        if (faults.size() == MOST) {
            faults.add(new Fault(file, line, column, "more than " + MOST + " faults", "mend these first"));
            throwIfAny();
        }
    }

    /** What is built, or empty with a fault at the node if it is refused. */
    <T> Optional<T> built(Node where, Supplier<T> build) {
        try {
            return Optional.of(build.get());
        } catch (CaseRefused e) {
            add(where, e.what(), e.mend());
        } catch (IllegalArgumentException e) {
            add(where, String.valueOf(e.getMessage()), "correct it");
        }
        return Optional.empty();
    }

    boolean isEmpty() {
        return faults.isEmpty();
    }

    void throwIfAny() {
        if (!faults.isEmpty()) {
            throw failure();
        }
    }

    CaseFileFaults failure() {
        return new CaseFileFaults(faults.stream()
                .sorted(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column))
                .toList());
    }

    static int line(Node where) {
        return where.getStartMark().map(Mark::getLine).orElse(0) + 1;
    }
}
