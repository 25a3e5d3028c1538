package witnessmark.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;

/** Whole judgements of the sample cases, warm: rules, posterior, weights, attribution, next checks, advice. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 3, time = 3)
public class DiagnosisBenchmark {
    private final Diagnosis diagnosis = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private final List<CaseDocument> samples = ShippedKnowledge.samples();
    private int next;

    @Benchmark
    public Judgement judgement() {
        next = (next + 1) % samples.size();
        return diagnosis.judge(samples.get(next).present());
    }
}
