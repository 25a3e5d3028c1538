/**
 * What the logs of a whole fleet come to as tables: one row for each act, one record for each truck and day. It decides
 * which logs count and what is pooled, the same on one machine and on many. It must not know of cases, knowledge,
 * Spring, a database, the terminal, or what the logs are kept in.
 */
@NullMarked
package witnessmark.fleet;

import org.jspecify.annotations.NullMarked;
