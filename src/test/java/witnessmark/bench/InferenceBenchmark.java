package witnessmark.bench;

import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import witnessmark.inference.ExactInference;
import witnessmark.inference.Gain;
import witnessmark.inference.Posterior;
import witnessmark.inference.ReportWeights;

/**
 * Warm answers on made-up networks. Every call starts from a new {@link ExactInference}, so that nothing remembered from
 * the call before is measured: order search included. Read the median; the mean suffers from whatever else runs.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
public class InferenceBenchmark {
    /** Causes, findings, links per cause, answered, of which present. */
    @Param({"60,200,7,35,15", "60,200,10,35,15", "60,200,10,45,25", "100,250,8,45,25", "600,4000,20,40,12"})
    public String size = "";

    private List<SparseNetwork> cases = List.of();
    private int next;

    @Setup
    public void draw() {
        int[] s = List.of(size.split(",")).stream().mapToInt(Integer::parseInt).toArray();
        cases = LongStream.rangeClosed(1, 10)
                .mapToObj(seed -> SparseNetwork.of(s[0], s[1], s[2], s[3], s[4], seed))
                .toList();
    }

    @Benchmark
    public Posterior posterior() {
        var drawn = nextCase();
        return new ExactInference(drawn.network()).posterior(drawn.evidence());
    }

    @Benchmark
    public ReportWeights weightsForFiveCauses() {
        var drawn = nextCase();
        return new ExactInference(drawn.network()).weights(drawn.evidence(), new int[] {0, 1, 2, 3, 4});
    }

    @Benchmark
    public List<Gain> gainsOfAllUnanswered() {
        var drawn = nextCase();
        return new ExactInference(drawn.network()).gains(drawn.evidence(), drawn.unanswered());
    }

    @Benchmark
    public double anyOfTenCauses() {
        var drawn = nextCase();
        return new ExactInference(drawn.network()).anyOf(Set.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9), drawn.evidence());
    }

    /** The ten cases take turns. */
    private SparseNetwork nextCase() {
        next = (next + 1) % cases.size();
        return cases.get(next);
    }
}
