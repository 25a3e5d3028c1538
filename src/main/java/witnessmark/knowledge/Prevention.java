package witnessmark.knowledge;

/** A step against a return of damage whose cause is of the class, in both languages. */
public record Prevention(String classId, String english, String spanish) implements BothLanguages {}
