package witnessmark.diagnosis.fact;

/** What is known of a finding that was looked at. */
public enum State {
    PRESENT,
    ABSENT,
    UNSURE
}
