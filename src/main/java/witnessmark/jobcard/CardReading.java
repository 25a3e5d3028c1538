package witnessmark.jobcard;

import java.util.List;

/**
 * What a job card was taken to say.
 *
 * @param proposals in the order of the card
 * @param notUnderstood its parts that led to no proposal, in its own words
 */
public record CardReading(List<Proposal> proposals, List<String> notUnderstood) {
    public CardReading {
        proposals = List.copyOf(proposals);
        notUnderstood = List.copyOf(notUnderstood);
    }
}
