package witnessmark.knowledge;

import java.util.List;

/**
 * Something that can be seen, heard, measured, read in a log or learnt from papers.
 * Present means the sign is there; absent means looked at and sound.
 *
 * @param system part of the gearbox it belongs to
 * @param ask the question to the technician
 * @param access id of the step it is checked in
 * @param minutes work of the check itself once the step is open
 * @param background chance of it without any known cause
 * @param needs findings about how the check was done; answered absent, the answer counts as unsure
 * @param cautions ids of the cautions that the check itself needs, besides those of the step
 * @param whenFound ids of the cautions that hold from the moment it is found or cannot be ruled out
 */
public record Finding(
        String id,
        String system,
        String title,
        String ask,
        Kind kind,
        String access,
        double minutes,
        String look,
        String looksLike,
        String confusedWith,
        double background,
        String part,
        String term,
        List<String> words,
        Applicability applicability,
        List<String> needs,
        List<String> cautions,
        List<String> whenFound,
        List<String> sources) {

    /** What sort of observation it is. */
    public enum Kind {
        SYMPTOM,
        OUTSIDE_CHECK,
        TEARDOWN,
        MEASUREMENT,
        HISTORY,
        LOG
    }

    /** Whether the program works it out from the truck's data, so that nobody needs to be asked. */
    public boolean isComputed() {
        return id.startsWith("computed-");
    }
}
