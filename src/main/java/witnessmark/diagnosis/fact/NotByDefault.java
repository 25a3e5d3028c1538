package witnessmark.diagnosis.fact;

/** Where the finding is present nothing is of this class by what it commonly is: a circumstance must say so. */
public record NotByDefault(String finding, String classId) {}
