package witnessmark.gearbox;

/**
 * One thing wrong with a truck profile.
 *
 * @param where the entry, as written in the profile: {@code gearbox.main-ratios}
 * @param what what was given there and why it cannot be
 * @param mend what to give instead
 */
public record ProfileFault(String where, String what, String mend) {

    public String text() {
        return where + ": " + what + "; " + mend;
    }
}
