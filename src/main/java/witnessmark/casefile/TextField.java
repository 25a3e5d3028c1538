package witnessmark.casefile;

import java.util.Locale;

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
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The text as the case keeps it; throws {@link CaseRefused} if it cannot be kept. */
    public String checked(String text) {
        return this == TITLE ? CheckedText.line(word(), text) : CheckedText.free(word(), text);
    }
}
