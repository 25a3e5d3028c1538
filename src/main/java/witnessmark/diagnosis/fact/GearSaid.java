package witnessmark.diagnosis.fact;

import witnessmark.knowledge.Finding.GearRole;

/** The gear in which a finding was heard, or the pair on which it was seen. */
public record GearSaid(String finding, GearRole role, String gear) {}
