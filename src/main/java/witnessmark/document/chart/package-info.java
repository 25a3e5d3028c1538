/**
 * Draws computed results as charts, in SVG and roughly in text.
 * It must not know of cases, causes, a database or the terminal; of results it knows those of the gearbox only.
 */
@NullMarked
package witnessmark.document.chart;

import org.jspecify.annotations.NullMarked;
