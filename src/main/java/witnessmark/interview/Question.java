package witnessmark.interview;

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
 * @param measure what can be measured instead of answering yes or no
 */
public record Question(int number, Finding finding, NextCheck check, NextVisit visit, Optional<Measure> measure) {}
