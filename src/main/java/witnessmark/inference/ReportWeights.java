package witnessmark.inference;

/**
 * Weight of each report for each cause: by how many decibans the odds of the cause stand higher than if that report alone
 * were withdrawn. Infinite where the report makes a cause certain or rules it out;
 * odds beyond 1e200 either way count as certain.
 *
 * @param findings the findings whose reports carry something, ascending
 * @param causes the causes asked about
 * @param decibans one row for each finding, one column for each cause
 */
public record ReportWeights(int[] findings, int[] causes, double[][] decibans) {}
