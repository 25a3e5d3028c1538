package witnessmark.fleet;

/** What became of one log of the fleet. */
public sealed interface ReadOutcome permits FleetLog, UncountedLog {}
