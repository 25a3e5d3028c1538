package witnessmark.document.drawing;

import witnessmark.knowledge.Part;

/** A rectangle of a drawing. */
record Box(double x, double y, double width, double height) {
    static Box of(Part.Place place) {
        return new Box(place.x(), place.y(), place.width(), place.height());
    }

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
