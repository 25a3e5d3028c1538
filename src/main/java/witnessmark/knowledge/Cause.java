package witnessmark.knowledge;

import java.util.List;

/**
 * Something that can have happened to the gearbox.
 *
 * @param classWhen what turns the class, in order: the first whose finding is present counts
 * @param asksWhy whether it is a part that failed and whose it is turns on why, so that it is nobody's before one of the
 *     circumstances of {@code classWhen} was answered
 * @param prior chance of it before anything was looked at
 * @param mechanism plain sentences that can be read out to the fleet
 * @param provedGood findings that must be answered absent before this cause may be concluded
 * @param provedGoodAny sets of findings of which one each must be answered absent before it may be concluded
 * @param breeds causes that this one can bring about in time
 * @param harmsNothing whether it brings about nothing else, so that it only stands beside what it does not explain
 * @param repairAt ids of the deepest places in which the repair has hands; empty where a site does not say it
 * @param cautions its own, then those of the whole way to each place of its repair, each once
 */
public record Cause(
        String id,
        String system,
        String title,
        String classId,
        List<ClassWhen> classWhen,
        boolean asksWhy,
        double prior,
        String mechanism,
        List<Link> links,
        List<Against> against,
        List<String> provedGood,
        List<List<String>> provedGoodAny,
        List<String> breeds,
        boolean harmsNothing,
        Applicability applicability,
        List<String> repair,
        List<String> repairAt,
        List<String> coaching,
        List<String> towing,
        List<String> cautions,
        List<String> sources) {

    /**
     * The cause's class is another one where this finding is present.
     *
     * @param asked whether a conclusion waits for it to be looked at
     */
    public record ClassWhen(String finding, String classId, Asked asked) {}

    /** When a conclusion waits for a circumstance, unless another one decides. */
    public enum Asked {
        /** Once the cause was seen, whoever is named. */
        ONCE_SEEN,
        /** Where somebody would be named, as is asked of its kind. */
        AS_A_RULE,
        /** It counts where it is known, and need not be asked. */
        NEVER
    }

    /**
     * What the cause leaves behind.
     *
     * @param strength chance that the cause, if at work, produces the finding
     * @param strengthWord the word it was written with
     * @param specific whether the finding is nearly specific to this cause, so that it may carry a conclusion
     * @param look whether the finding is the look at this cause itself: present it is there, absent it is not
     * @param why what else could leave the finding, and why that is excluded; empty where it is not specific
     */
    public record Link(
            String finding, double strength, String strengthWord, boolean specific, boolean look, String why) {
        /** Whether the cause leaves the finding more often than not. */
        public boolean isExpected() {
            return strength >= 0.5;
        }

        /** The same link with another strength. */
        public Link withStrength(double strength) {
            return new Link(finding, strength, strengthWord, specific, look, why);
        }
    }

    /** A finding that, present, multiplies the odds of the cause by {@code factor}. */
    public record Against(String finding, double factor, String why) {}

    /** The ids of the findings that may carry a conclusion to this cause. */
    public List<String> specificFindings() {
        return links.stream().filter(Link::specific).map(Link::finding).toList();
    }

    /** The ids of the findings that are the look at this cause itself. */
    public List<String> looks() {
        return links.stream().filter(Link::look).map(Link::finding).toList();
    }

    /** The same cause with other links. */
    public Cause withLinks(List<Link> links) {
        return with(prior, links, title, mechanism, against, repair, cautions);
    }

    /** The same cause in other words. */
    Cause saying(String title, String mechanism, List<Against> against, List<String> repair) {
        return with(prior, links, title, mechanism, against, repair, cautions);
    }

    /** The same cause with another prior. */
    public Cause withPrior(double prior) {
        return with(prior, links, title, mechanism, against, repair, cautions);
    }

    /** The same cause with other cautions. */
    Cause withCautions(List<String> cautions) {
        return with(prior, links, title, mechanism, against, repair, cautions);
    }

    private Cause with(
            double prior,
            List<Link> links,
            String title,
            String mechanism,
            List<Against> against,
            List<String> repair,
            List<String> cautions) {
        return new Cause(
                id,
                system,
                title,
                classId,
                classWhen,
                asksWhy,
                prior,
                mechanism,
                links,
                against,
                provedGood,
                provedGoodAny,
                breeds,
                harmsNothing,
                applicability,
                repair,
                repairAt,
                coaching,
                towing,
                cautions,
                sources);
    }
}
