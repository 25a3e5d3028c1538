package witnessmark.diagnosis.fact;

import java.util.List;

/**
 * From the knowledge base: the cause is a part that failed, which can have come about in several ways, of several owners.
 *
 * @param asked the circumstances that make it somebody else's, those that count first standing first
 * @param answeredBy what says something of how it came about, whichever way it is answered
 */
public record WhyItIsSo(String cause, List<String> asked, List<String> answeredBy) {}
