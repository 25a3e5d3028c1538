package witnessmark.casefile;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Optional;
import witnessmark.gearbox.EnumWord;

/** The single facts a warranty claim asks for; none is demanded. */
public enum ClaimField {
    WORK_ORDER("Work order"),
    CLAIM_NUMBER("Claim number"),
    CUSTOMER("Customer"),
    SHOP("Shop"),
    TRUCK_SERIAL("Truck serial number"),
    GEARBOX_SERIAL("Gearbox serial number"),
    IN_SERVICE("In service since", Form.DATE),
    FAILED("Failed", Form.DATE),
    REPAIRED("Repaired", Form.DATE),
    ENGINE_HOURS("Engine hours", Form.NUMBER),
    LABOUR_HOURS("Labour hours", Form.NUMBER),
    COST("Cost with its currency"),
    LOOKED("Looked at the parts"),
    MEASURED("Measured"),
    SIGNS("Signs for the shop");

    private enum Form {
        LINE,
        DATE,
        NUMBER
    }

    private static final double MOST = 1_000_000;

    private final String title;
    private final Form form;

    ClaimField(String title) {
        this(title, Form.LINE);
    }

    ClaimField(String title, Form form) {
        this.title = title;
        this.form = form;
    }

    public String title() {
        return title;
    }

    /** The word it is written by, such as work-order. */
    public String word() {
        return EnumWord.of(this);
    }

    /** Whether its value is a plain number of hours. */
    public boolean isNumber() {
        return form == Form.NUMBER;
    }

    /** The field of this word; empty if there is none. */
    public static Optional<ClaimField> parse(String word) {
        return Arrays.stream(values()).filter(f -> f.word().equals(word)).findFirst();
    }

    /** The value as the case keeps it: dates by ISO 8601, numbers plain; throws {@link CaseRefused} otherwise. */
    public String checked(String value) {
        String line = CheckedText.filledLine(word(), value);
        return switch (form) {
            case LINE -> line;
            case DATE -> date(line);
            case NUMBER -> number(line);
        };
    }

    private String date(String line) {
        try {
            return LocalDate.parse(line).toString();
        } catch (DateTimeParseException e) {
            throw new CaseRefused(
                    word() + ": '" + CheckedText.shown(line) + "' is not a day", "write it as 2026-03-02");
        }
    }

    private String number(String line) {
        try {
            double value = PlainNumber.checked(word(), Double.parseDouble(line));
            if (value >= 0 && value <= MOST) {
                return PlainNumber.of(value);
            }
        } catch (NumberFormatException e) {
            // Refused below like a number that no engine or bill reaches.
        }
        throw new CaseRefused(
                word() + ": '" + CheckedText.shown(line) + "' is not a number of hours",
                "give one from 0 to " + PlainNumber.of(MOST));
    }
}
