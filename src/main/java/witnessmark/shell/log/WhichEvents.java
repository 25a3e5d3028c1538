package witnessmark.shell.log;

/** Which events are shown: the worst alone, or all of them besides. */
enum WhichEvents {
    WORST,
    ALL;

    /** As the option {@code --events} says. */
    static WhichEvents of(boolean all) {
        return all ? ALL : WORST;
    }
}
