/**
 * The case as a technician keeps it: vehicle, gearbox layout, complaint, findings, measurements, evidence, attachments.
 * It must not know of causes, rules, inference, the terminal, or how a case is stored or written down.
 */
@NullMarked
package witnessmark.casefile;

import org.jspecify.annotations.NullMarked;
