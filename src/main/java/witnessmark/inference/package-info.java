/**
 * Exact inference in two-layer noisy-OR networks: posterior, weight of each report, gain of each question. It must not
 * know of gearboxes, rules, frameworks or stores: causes and findings are plain indices here.
 */
@NullMarked
package witnessmark.inference;

import org.jspecify.annotations.NullMarked;
