/**
 * A second, independent simulator of drives: a truck with mass, engine torque, a clutch of limited capacity and a road
 * with grades, driven by a driver with reaction times and errors. It shares nothing with the first simulator but the
 * gear tables, and it labels what it did with what a log must have for that to be seen.
 */
@NullMarked
package witnessmark.triplog.road;

import org.jspecify.annotations.NullMarked;
