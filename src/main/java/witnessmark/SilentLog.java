package witnessmark;

/** The configuration of the platform's own log: no handler, so that nothing a library says there reaches the terminal. */
public final class SilentLog {}
