/**
 * Draws computed results as charts, in SVG: those of the gearbox and those of trip logs.
 * It must not know of cases, causes, a database or the terminal.
 */
@NullMarked
package witnessmark.document.chart;

import org.jspecify.annotations.NullMarked;
