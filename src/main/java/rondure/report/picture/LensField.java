package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import rondure.base.Orientation;
import rondure.blur.LensStar;

/**
 * What a lens alone makes of a star over the frame: enlarged outlines at a grid of places, in
 * display orientation, each about a pale ring as wide as the core. Thick outlines run at half the
 * peak, thin ones at a tenth of it; where no star was measured both are thin and grey.
 *
 * @param places in stored pixels
 * @param widthPx stored width of the frame
 * @param heightPx stored height
 * @param orientation how the frame is shown
 * @param words for the scale
 */
public record LensField(
    List<Place> places, int widthPx, int heightPx, Orientation orientation, PictureWords words)
    implements Picture {
  private static final double SCALE_STRIP = 14;

  /** A core is drawn at most this wide, units. */
  private static final double CORE_DRAWN = 15;

  private static final double ROOM = 0.94;
  private static final int SAMPLES = 61;
  private static final double FAINT = 0.1;

  /**
   * A star at a place.
   *
   * @param xPx stored
   * @param yPx stored
   * @param star what it looks like
   * @param seen whether stars were measured about there
   */
  public record Place(double xPx, double yPx, LensStar star, boolean seen) {}

  /** Outlines of a star about (0, 0), frame pixels, as displayed. */
  private record Outlines(Path2D half, Path2D faint) {
    double reach() {
      Rectangle2D box = faint.getBounds2D();
      double across = Math.max(Math.abs(box.getMinX()), Math.abs(box.getMaxX()));
      return Math.max(across, Math.max(Math.abs(box.getMinY()), Math.abs(box.getMaxY())));
    }
  }

  public LensField {
    places = List.copyOf(places);
    if (places.isEmpty()) {
      throw new IllegalArgumentException("a lens field needs a place");
    }
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    DisplayFrame frame = frame(width - 1, height - SCALE_STRIP - 1);
    List<Outlines> outlines = places.stream().map(this::outlines).toList();
    double enlargement = enlargement(frame, outlines);
    graphics.setColor(Palette.MUTED);
    graphics.setStroke(new BasicStroke(0.7f));
    graphics.draw(new Rectangle2D.Double(0.5, 0.5, frame.width(), frame.height()));
    for (int i = 0; i < places.size(); i++) {
      drawPlace(graphics, frame, places.get(i), outlines.get(i), enlargement);
    }
    drawScale(graphics, frame, enlargement);
  }

  private DisplayFrame frame(double width, double height) {
    double scale =
        Math.min(
            width / orientation.displayWidthPx(widthPx, heightPx),
            height / orientation.displayHeightPx(widthPx, heightPx));
    return new DisplayFrame(widthPx, heightPx, orientation, scale);
  }

  private Outlines outlines(Place place) {
    double half = place.star().reachPx();
    double samplesPerPx = (SAMPLES - 1) / (2 * half);
    var stamp = place.star().stamp(half, SAMPLES);
    return new Outlines(
        HalfMaximumOutline.of(stamp, samplesPerPx, orientation, 0.5),
        HalfMaximumOutline.of(stamp, samplesPerPx, orientation, FAINT));
  }

  /** Drawing units per pixel of star width: no star reaches its neighbour. */
  private double enlargement(DisplayFrame frame, List<Outlines> outlines) {
    double core = places.stream().mapToDouble(p -> p.star().coreFwhmPx()).max().orElseThrow();
    double apart = frame.scale() * apartPx();
    double reach = outlines.stream().mapToDouble(Outlines::reach).max().orElseThrow();
    return Math.min(CORE_DRAWN / core, ROOM * apart / (2 * reach));
  }

  private double apartPx() {
    List<Double> apart = new ArrayList<>(List.of((double) Math.min(widthPx, heightPx)));
    Place first = places.get(0);
    for (Place other : places.subList(1, places.size())) {
      apart.add(Math.hypot(other.xPx() - first.xPx(), other.yPx() - first.yPx()));
    }
    return apart.stream().mapToDouble(d -> d).min().orElseThrow();
  }

  private void drawPlace(
      Graphics2D graphics, DisplayFrame frame, Place place, Outlines outlines, double enlargement) {
    double x = frame.x(place.xPx(), place.yPx());
    double y = frame.y(place.xPx(), place.yPx());
    double core = place.star().coreFwhmPx() * enlargement;
    graphics.setColor(Palette.HAIRLINE);
    graphics.setStroke(new BasicStroke(0.6f));
    graphics.draw(new Ellipse2D.Double(x - core / 2, y - core / 2, core, core));
    AffineTransform about = AffineTransform.getTranslateInstance(x, y);
    about.scale(enlargement, enlargement);
    Shape half = about.createTransformedShape(outlines.half());
    graphics.setColor(place.seen() ? Palette.LENS : Palette.ABSENT);
    graphics.setStroke(new BasicStroke(0.5f));
    graphics.draw(about.createTransformedShape(outlines.faint()));
    graphics.setStroke(new BasicStroke(place.seen() ? 1.3f : 0.7f));
    graphics.draw(half);
  }

  private void drawScale(Graphics2D graphics, DisplayFrame frame, double enlargement) {
    int barPx = ScaleBar.lengthPx(enlargement, 45);
    ScaleBar.draw(
        graphics,
        0.5,
        frame.height() + 8,
        barPx * enlargement,
        words.say(
            "picture.ellipseScale",
            Map.of(
                "length",
                Integer.toString(barPx),
                "times",
                String.format(Locale.ROOT, "%.0f", enlargement / frame.scale()))));
  }
}
