package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * How the frames were graded, as one bar whose parts carry their numbers: darker is better, and
 * each part has a filling of its own.
 *
 * @param parts from left to right, none of them empty
 */
public record GradeBar(List<Part> parts) implements Picture {
  private static final double BAR_TOP = 27;
  private static final double BAR_HIGH = 13;
  private static final double HATCH_APART = 4;
  private static final float NUMBER_SIZE = 24;
  private static final float WORDS_SIZE = 11.5f;
  private static final double NUMBER_GAP = 5;
  private static final double LABEL_GAP = 16;

  /** How a part is filled. */
  public enum Filling {
    SOLID,
    HATCHED,
    PALE,
    EMPTY
  }

  /**
   * @param count frames
   * @param words what they are
   * @param filling of the part
   */
  public record Part(int count, String words, Filling filling) {
    public Part {
      if (count < 1) {
        throw new IllegalArgumentException("a part holds frames, count was " + count);
      }
    }

    double labelWidth() {
      return TextMeasure.width(ReportFonts.serif(NUMBER_SIZE), Integer.toString(count))
          + NUMBER_GAP
          + TextMeasure.width(ReportFonts.sans(WORDS_SIZE), words);
    }
  }

  public GradeBar {
    parts = List.copyOf(parts);
  }

  /** Height that the picture needs, CSS pixels. */
  public static double height() {
    return BAR_TOP + BAR_HIGH + 2;
  }

  /** Left ends of the labels: at their part, pushed aside where two would touch. */
  double[] labelStarts(double width) {
    double[] starts = new double[parts.size()];
    double perFrame = width / parts.stream().mapToInt(Part::count).sum();
    double end = 0;
    double from = 0;
    for (int i = 0; i < starts.length; i++) {
      starts[i] = Math.max(from, end);
      end = starts[i] + parts.get(i).labelWidth() + LABEL_GAP;
      from += parts.get(i).count() * perFrame;
    }
    double limit = width + LABEL_GAP;
    for (int i = starts.length - 1; i >= 0; i--) {
      starts[i] = Math.max(0, Math.min(starts[i], limit - parts.get(i).labelWidth() - LABEL_GAP));
      limit = starts[i];
    }
    return starts;
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double perFrame = width / parts.stream().mapToInt(Part::count).sum();
    double[] starts = labelStarts(width);
    double from = 0;
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      double wide = part.count() * perFrame;
      double room = Math.max(0.8, wide - (i + 1 < parts.size() ? 1.2 : 0));
      fill(graphics, new Rectangle2D.Double(from, BAR_TOP, room, BAR_HIGH), part.filling());
      drawLabel(graphics, part, starts[i]);
      from += wide;
    }
  }

  private static void drawLabel(Graphics2D graphics, Part part, double x) {
    String number = Integer.toString(part.count());
    graphics.setColor(Palette.INK);
    graphics.setFont(ReportFonts.serif(NUMBER_SIZE));
    graphics.drawString(number, (float) x, (float) BAR_TOP - 6);
    double wide = TextMeasure.width(graphics.getFont(), number);
    graphics.setFont(ReportFonts.sans(WORDS_SIZE));
    graphics.setColor(Palette.MUTED);
    graphics.drawString(part.words(), (float) (x + wide + NUMBER_GAP), (float) BAR_TOP - 6);
  }

  private static void fill(Graphics2D graphics, Rectangle2D part, Filling filling) {
    graphics.setColor(
        switch (filling) {
          case SOLID -> Palette.SHARP;
          case PALE -> Palette.HAIRLINE;
          case HATCHED, EMPTY -> Palette.PAPER;
        });
    graphics.fill(part);
    graphics.setStroke(new BasicStroke(0.8f));
    if (filling == Filling.HATCHED) {
      hatch(graphics, part);
    }
    graphics.setColor(filling == Filling.EMPTY ? Palette.MUTED : graphics.getColor());
    if (filling == Filling.EMPTY || filling == Filling.HATCHED) {
      graphics.draw(
          new Rectangle2D.Double(
              part.getX() + 0.4, part.getY() + 0.4, part.getWidth() - 0.8, part.getHeight() - 0.8));
    }
  }

  private static void hatch(Graphics2D graphics, Rectangle2D part) {
    Shape before = graphics.getClip();
    graphics.clip(part);
    graphics.setColor(Palette.SHARP);
    double high = part.getHeight();
    for (double x = part.getX() - high; x < part.getMaxX(); x += HATCH_APART) {
      graphics.draw(new Line2D.Double(x, part.getMaxY(), x + high, part.getY()));
    }
    graphics.setClip(before);
  }
}
