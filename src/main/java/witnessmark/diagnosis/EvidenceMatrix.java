package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.fact.Taken;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Vocabulary.CauseClass;

/**
 * Each finding on record against each class of causes: what it does to the chance that a cause of the class is at work.
 *
 * @param classes ids of the classes, in the order of the vocabulary
 * @param rows one for each finding that entered the reasoning, in order of finding id
 */
public record EvidenceMatrix(List<String> classes, List<Row> rows) {

    /**
     * One finding.
     *
     * @param state present, absent or unsure, as it was taken
     * @param from "reported", or the reason it was taken so
     * @param decibans by class id: ten times the decimal logarithm by which the odds of the class change when this
     *     finding alone is left out; positive speaks for the class
     */
    public record Row(String finding, String title, FindingState state, String from, Map<String, Double> decibans) {}

    static EvidenceMatrix of(NetworkReading reading, KnowledgeBase knowledge) {
        List<String> classes =
                knowledge.vocabulary().classes().stream().map(CauseClass::id).toList();
        Titles titles = new Titles(knowledge);
        Sentences say = new Sentences(knowledge.language());
        List<Row> rows = new ArrayList<>();
        for (String finding : new TreeSet<>(reading.taken().keySet())) {
            Taken taken = reading.taken().get(finding);
            rows.add(new Row(
                    finding,
                    knowledge.findings().get(finding).title(),
                    taken.state(),
                    taken.isAsReported() ? say.say("reported") : titles.fill(taken.from()),
                    decibans(reading, finding, classes)));
        }
        return new EvidenceMatrix(classes, List.copyOf(rows));
    }

    private static Map<String, Double> decibans(NetworkReading reading, String finding, List<String> classes) {
        Map<String, Double> decibans = new LinkedHashMap<>();
        for (String id : classes) {
            Set<Integer> members = reading.membersInQuestion(id);
            decibans.put(
                    id,
                    members.isEmpty()
                            ? 0
                            : Weights.change(reading.classProbability(id), reading.without(finding, members)));
        }
        return decibans;
    }
}
