package witnessmark.shell.judge;

/** How strongly a finding speaks, in words a technician uses. */
enum Strength {
    STRONGLY("strength.strongly"),
    SOMEWHAT("strength.somewhat"),
    A_LITTLE("strength.a-little");

    private static final double STRONG_DECIBANS = 10;
    private static final double SOME_DECIBANS = 4;

    private final String key;

    Strength(String key) {
        this.key = key;
    }

    static Strength of(double decibans) {
        double size = Math.abs(decibans);
        return size >= STRONG_DECIBANS ? STRONGLY : size >= SOME_DECIBANS ? SOMEWHAT : A_LITTLE;
    }

    /** Key of the word among the texts. */
    String key() {
        return key;
    }
}
