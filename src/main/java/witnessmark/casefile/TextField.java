package witnessmark.casefile;

import witnessmark.gearbox.EnumWord;

/** The single texts of a case. */
public enum TextField {
    TITLE,
    COMPLAINT,
    DRIVER_ACCOUNT,
    /** The correction: what was done to put it right. */
    WORK_DONE,
    /** How the unit came: what could still be tried, what lay open; its form is the interview's own. */
    UNIT_STATE,
    /** Why an empty case is none. */
    VOIDED,
    /** Where an interrupted interview goes on, in cases of older programs; it is kept beside the case since. */
    INTERVIEW_POSITION;

    public String word() {
        return EnumWord.of(this);
    }

    /** The text as the case keeps it; throws {@link CaseRefused} if it cannot be kept. */
    public String checked(String text) {
        return this == TITLE ? CheckedText.line(word(), text) : CheckedText.free(word(), text);
    }
}
