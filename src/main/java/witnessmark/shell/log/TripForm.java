package witnessmark.shell.log;

/** The forms in which what a log came to is given. */
enum TripForm {
    TEXT,
    JSON,
    CSV
}
