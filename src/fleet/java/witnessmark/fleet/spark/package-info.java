/**
 * The tables of a whole fleet's logs, made on a Spark cluster. Which logs count and what is pooled is decided in
 * {@code witnessmark.fleet}, as on one machine; here stand only the reading, the keeping and the spreading.
 */
@NullMarked
package witnessmark.fleet.spark;

import org.jspecify.annotations.NullMarked;
