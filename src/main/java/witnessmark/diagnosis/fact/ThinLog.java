package witnessmark.diagnosis.fact;

/** Logs speak for the finding, but cover too little, or too doubtfully, to rest a conclusion about a person on. */
public record ThinLog(String finding, String why) {}
