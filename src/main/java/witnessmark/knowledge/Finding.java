package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;

/**
 * Something that can be seen, heard, measured, read in a log or learnt from papers.
 * Present means the sign is there; absent means looked at and sound.
 *
 * @param system part of the gearbox it belongs to
 * @param ask the question to the technician
 * @param access id of the step it is checked in
 * @param minutes work of the check itself once the step is open
 * @param background chance of it without any known cause
 * @param part id of the part on which it is seen; empty for none
 * @param inOrder whether it says that the part is in order, so that no drawing marks it as a place of damage
 * @param needs findings about how the check was done; answered absent, the answer counts as unsure
 * @param cautions ids of the cautions that the check itself needs, besides those of the step
 * @param whenFound ids of the cautions that hold from the moment it is found or cannot be ruled out
 * @param ends what the truck no longer does where it is present; empty for a finding that leaves it as it is
 * @param spoiledBy findings that, present, leave the answer unsure: what was washed off or drained cannot be read
 * @param renews findings that, sound, tell nothing of what was where this one is present: the part was renewed or set
 * @param voids the kind of finding that tells nothing where this one is present; empty for none
 * @param doubtsIdentity whether it puts in doubt that the evidence is from one unit, so that no class is concluded
 * @param handsOpen the classes and causes of which it leaves open whose doing it was, so that they are only pointed to
 * @param notByDefault the classes that nothing is of by what it commonly is where this is found, so that they are only
 *     pointed to unless a circumstance says so
 * @param madeOf the answers that together are it, where nobody is asked for it; empty for a finding of its own
 * @param age whether it only tells how old the unit is: of circumstances it counts last
 * @param gearRole whether it is heard in a gear or seen on a pair, so that the two can be held against each other
 * @param says what is to be said beside a cause that names people where it is present; empty for nothing
 * @param conclusive why the finding may move the odds by more than other signs; empty for one that may not
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
        boolean inOrder,
        String term,
        List<String> words,
        Applicability applicability,
        List<String> needs,
        List<String> cautions,
        List<String> whenFound,
        Optional<AccessStep.Use> ends,
        List<String> spoiledBy,
        List<String> renews,
        Optional<Kind> voids,
        boolean doubtsIdentity,
        List<String> handsOpen,
        List<String> notByDefault,
        Optional<MadeOf> madeOf,
        boolean age,
        Optional<GearRole> gearRole,
        String says,
        String conclusive,
        List<String> sources) {

    /** What a gear said of the finding means. */
    public enum GearRole {
        /** The main-box gear in which it is heard. */
        HEARD_IN,
        /** The pair of gears on which it is seen. */
        SEEN_ON,
        /** The rail that it is of: one of its gears, or both. */
        OF_RAIL
    }

    /** What sort of observation it is: how far it can be trusted, and of what it speaks. */
    public enum Kind {
        /** The part itself was looked at or measured: seen broken it is broken, seen sound it is sound. */
        LOOK,
        /** A trace that something left on a part. */
        MARK,
        /** Seen, felt or tried from outside, parts closed. */
        SIGN,
        /** A figure read that speaks of a part only indirectly: a laboratory's, a temperature, a time. */
        READING,
        /** What the truck does. */
        SYMPTOM,
        /** Found in papers. */
        PAPER,
        /** Told by somebody. */
        ACCOUNT,
        /** Found in a trip log. */
        LOG,
        /** Worked out by the program. */
        COMPUTED;

        /** Whether it can bear witness beside the parts: a log, a paper, a reckoning; not what somebody tells. */
        public boolean isWitness() {
            return this == LOG || this == PAPER || this == COMPUTED;
        }

        /** Whether the parts or the truck themselves say so, not a person, a paper, a log or a reckoning. */
        public boolean isPhysical() {
            return this == LOOK || this == MARK || this == SIGN || this == READING;
        }
    }

    /** The same finding with another background. */
    public Finding withBackground(double background) {
        return with(id, background, title, ask, look, looksLike, confusedWith, says);
    }

    /** One like it under another id and title. */
    Finding named(String id, String title) {
        return with(id, background, title, ask, look, looksLike, confusedWith, says);
    }

    /** The same finding in other words. */
    Finding saying(String title, String ask, String look, String looksLike, String confusedWith, String says) {
        return with(id, background, title, ask, look, looksLike, confusedWith, says);
    }

    private Finding with(
            String id,
            double background,
            String title,
            String ask,
            String look,
            String looksLike,
            String confusedWith,
            String says) {
        return new Finding(
                id,
                system,
                title,
                ask,
                kind,
                access,
                minutes,
                look,
                looksLike,
                confusedWith,
                background,
                part,
                inOrder,
                term,
                words,
                applicability,
                needs,
                cautions,
                whenFound,
                ends,
                spoiledBy,
                renews,
                voids,
                doubtsIdentity,
                handsOpen,
                notByDefault,
                madeOf,
                age,
                gearRole,
                says,
                conclusive,
                sources);
    }

    /** Whether the program works it out from the truck's data, so that nobody needs to be asked. */
    public boolean isComputed() {
        return kind == Kind.COMPUTED;
    }
}
