package witnessmark.interview;

import java.util.List;
import java.util.Optional;
import witnessmark.diagnosis.NextCheck;
import witnessmark.diagnosis.NextVisit;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.Measure;

/**
 * The question to ask now.
 *
 * @param number 1 for the first check asked in this case
 * @param visit the going to a place that it belongs to
 * @param cautions ids of the cautions that go with it as the unit lies now
 * @param measure what can be measured instead of answering yes or no
 */
public record Question(
        int number,
        Finding finding,
        NextCheck check,
        NextVisit visit,
        List<String> cautions,
        Optional<Measure> measure) {}
