package witnessmark.casefile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What was signed: the judgement as it stood when the case was closed, whatever the knowledge says later.
 *
 * @param verdict id of the class, or "undetermined"
 * @param standing concluded, points-to or undetermined
 * @param pointsTo id of the class it pointed to
 * @param sentence the verdict in words
 * @param causes the causes in rank order, the likely ones
 * @param carriedBy titles of the findings and measurements that carried it, most telling first
 * @param made what it was made with
 */
public record SignedJudgement(
        String verdict,
        String standing,
        Optional<String> pointsTo,
        String sentence,
        List<SignedCause> causes,
        List<String> carriedBy,
        MadeWith made) {

    public SignedJudgement {
        verdict = CheckedText.id("verdict", verdict);
        standing = CheckedText.id("standing", standing);
        pointsTo.ifPresent(id -> CheckedText.id("points-to", id));
        sentence = CheckedText.free("verdict sentence", sentence);
        causes = List.copyOf(causes);
        carriedBy = carriedBy.stream()
                .map(title -> CheckedText.free("carried by", title))
                .toList();
    }

    /**
     * A cause as it was ranked.
     *
     * @param probability 0 to 1
     */
    public record SignedCause(String id, String title, String classId, double probability) {
        public SignedCause {
            id = CheckedText.id("cause", id);
            title = CheckedText.free("title of a cause", title);
            classId = CheckedText.id("class", classId);
            if (!(probability >= 0 && probability <= 1)) {
                throw new CaseRefused("probability " + probability + " of '" + id + "'", "give a number from 0 to 1");
            }
        }

        private Map<String, Object> form() {
            Map<String, Object> form = new LinkedHashMap<>();
            form.put("id", id);
            form.put("title", title);
            form.put("class", classId);
            form.put("probability", probability);
            return form;
        }
    }

    /** The cause concluded, or those of the class pointed to, likeliest first; none where nothing could be told. */
    public List<SignedCause> carrying() {
        String of = pointsTo.orElse(verdict);
        return causes.stream()
                .filter(c -> c.classId().equals(of))
                .limit(pointsTo.isPresent() ? causes.size() : 1)
                .toList();
    }

    /** For the chain, exports and answers; without what is empty. */
    public Map<String, Object> form() {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("verdict", verdict);
        form.put("standing", standing);
        pointsTo.ifPresent(to -> form.put("points-to", to));
        form.put("sentence", sentence);
        form.put("causes", causes.stream().map(SignedCause::form).toList());
        form.put("carried-by", carriedBy);
        form.put("knowledge", made.knowledge());
        made.site().ifPresent(site -> form.put("site-knowledge", site));
        form.put("program", made.program());
        return form;
    }
}
