package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * The whole night, one sign a frame, to be read like lines of text; a bar under a sign means: keep.
 *
 * @param runs nights or parts of the set, each starting a new line
 */
public record NightStrip(List<Run> runs) implements Picture {
  private static final double LABEL_WIDTH = 44;
  private static final double[] PITCHES = {18, 15, 12, 10, 8, 6.5, 5, 4, 3};
  private static final double LINE_PER_PITCH = 1.5;
  private static final double RUN_GAP = 7;

  /**
   * @param items in time order
   */
  public record Run(List<Item> items) {
    public Run {
      items = List.copyOf(items);
    }
  }

  /**
   * @param mark its sign
   * @param keep whether it is graded keep
   * @param time shown at the head of the line it starts, may be empty
   */
  public record Item(Mark mark, boolean keep, String time) {}

  public NightStrip {
    runs = List.copyOf(runs);
  }

  /** The height the strip needs at a width, at most about {@code largest} (all CSS pixels). */
  public double heightFor(double width, double largest) {
    return heightAt(pitchFor(width, largest), width);
  }

  private double pitchFor(double width, double largest) {
    for (double pitch : PITCHES) {
      if (heightAt(pitch, width) <= largest) {
        return pitch;
      }
    }
    return PITCHES[PITCHES.length - 1];
  }

  private double heightAt(double pitch, double width) {
    int lines = runs.stream().mapToInt(run -> lines(run, pitch, width)).sum();
    return lines * pitch * LINE_PER_PITCH + Math.max(0, runs.size() - 1) * RUN_GAP + 2;
  }

  private static int perLine(double pitch, double width) {
    return Math.max(1, (int) ((width - LABEL_WIDTH) / pitch));
  }

  private static int lines(Run run, double pitch, double width) {
    int perLine = perLine(pitch, width);
    return (run.items().size() + perLine - 1) / perLine;
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    double pitch = pitchFor(width, height);
    double y = pitch * LINE_PER_PITCH / 2;
    for (int i = 0; i < runs.size(); i++) {
      if (i > 0) {
        graphics.setColor(Palette.HAIRLINE);
        graphics.setStroke(new BasicStroke(0.7f));
        double rule = y - pitch * LINE_PER_PITCH / 2 + RUN_GAP / 2 - 1;
        graphics.draw(new Line2D.Double(0, rule, width, rule));
        y += RUN_GAP;
      }
      y = drawRun(graphics, runs.get(i), pitch, width, y);
    }
  }

  private static double drawRun(
      Graphics2D graphics, Run run, double pitch, double width, double firstY) {
    int perLine = perLine(pitch, width);
    double y = firstY;
    for (int i = 0; i < run.items().size(); i++) {
      Item item = run.items().get(i);
      int column = i % perLine;
      if (column == 0) {
        y = firstY + i / perLine * pitch * LINE_PER_PITCH;
        graphics.setColor(Palette.MUTED);
        graphics.setFont(ReportFonts.sans((float) Math.max(7, Math.min(10, pitch))));
        graphics.drawString(item.time(), 0f, (float) (y + Math.min(3.4, pitch * 0.35)));
      }
      double x = LABEL_WIDTH + (column + 0.5) * pitch;
      item.mark().draw(graphics, x, y, pitch * 0.86);
      if (item.keep()) {
        graphics.setColor(Palette.SHARP);
        graphics.fill(
            new Rectangle2D.Double(
                x - pitch * 0.36, y + pitch * 0.5, pitch * 0.72, Math.max(0.8, pitch * 0.12)));
      }
    }
    return firstY + lines(run, pitch, width) * pitch * LINE_PER_PITCH;
  }
}
