package witnessmark.shell.judge;

/** How much of a judgement is shown. */
enum Depth {
    /** What fits one screen ({@link JudgementScreen}). */
    SCREEN,
    /** All of it, strengths in words. */
    FULL,
    /** All of it, strengths as figures. */
    FIGURES;

    static Depth of(boolean full, boolean figures) {
        return figures ? FIGURES : full ? FULL : SCREEN;
    }
}
