package witnessmark.document.drawing;

/** A rectangle of a drawing. */
record Box(double x, double y, double width, double height) {
    double centreX() {
        return x + width / 2;
    }

    double centreY() {
        return y + height / 2;
    }

    boolean meets(Box other) {
        return x < other.x + other.width && other.x < x + width && y < other.y + other.height && other.y < y + height;
    }
}
