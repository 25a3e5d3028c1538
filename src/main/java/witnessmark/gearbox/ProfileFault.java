package witnessmark.gearbox;

/**
 * One thing wrong with a truck profile, or to be asked about it.
 *
 * @param where the entry, as written in the profile: {@code gearbox.main-ratios}
 * @param what what was given there and why it cannot be, or is unusual
 * @param mend what to give instead, or the question
 */
public record ProfileFault(String where, String what, String mend) {

    public String text() {
        return where + ": " + what + "; " + mend;
    }
}
