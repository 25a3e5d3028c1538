package witnessmark.triplog.road;

import java.util.Set;
import witnessmark.triplog.event.EventKind;
import witnessmark.triplog.signal.Signal;

/**
 * What the truck truly did, and what a log must have to show it.
 *
 * @param needs signals without which nobody could see it, besides engine and road speed
 * @param hertz rows a second without which nobody could see it
 * @param apartSeconds by how much the knob's and the lever's changes lie apart, where it rests on their order
 */
record RoadTruth(
        EventKind kind, double from, double to, Set<Signal> needs, double hertz, double apartSeconds, String what) {}
