package witnessmark.knowledge;

/** One file of a knowledge folder: its path below the folder, as the user would name it, and its bytes. */
public record KnowledgeFile(String name, byte[] content) {}
