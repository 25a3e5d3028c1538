package witnessmark.casefile;

import witnessmark.gearbox.Word;

/** The single texts of a case. */
public enum TextField {
    TITLE,
    COMPLAINT,
    DRIVER_ACCOUNT,
    /** The correction: what was done to put it right. */
    WORK_DONE,
    /** Where an interrupted interview goes on; its form is the interview's own. */
    INTERVIEW_POSITION;

    public String word() {
        return Word.of(this);
    }

    /** The text as the case keeps it; throws {@link CaseRefused} if it cannot be kept. */
    public String checked(String text) {
        return this == TITLE ? CheckedText.line(word(), text) : CheckedText.free(word(), text);
    }
}
