/**
 * Tables as CSV whose cells no spreadsheet takes for a formula.
 * It must not know what is in the table.
 */
@NullMarked
package witnessmark.document.table;

import org.jspecify.annotations.NullMarked;
