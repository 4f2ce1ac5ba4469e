package rondure.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * The whole night, one sign a frame, to be read like lines of text; a bar under a sign means: keep.
 * Times stand along the lines, and events are named above them, where there is room.
 *
 * @param runs nights or parts of the set, each starting a new line
 */
public record NightStrip(List<Run> runs) implements Picture {
  private static final double SIGN_SHARE = 0.84;
  private static final double WORDS_APART = 10;

  /**
   * @param items in time order
   * @param spans what happened, the weightiest first
   */
  public record Run(List<Item> items, List<Span> spans) {
    public Run {
      items = List.copyOf(items);
      spans = List.copyOf(spans);
    }
  }

  /**
   * @param mark its sign
   * @param keep whether it is graded keep
   * @param time of the frame, may be empty
   * @param isBreak whether another scene or a long pause comes before it
   */
  public record Item(Mark mark, boolean keep, String time, boolean isBreak) {}

  /**
   * @param first place of the first frame in the run, from 0
   * @param last place of the last one
   * @param name a few words
   */
  public record Span(int first, int last, String name) {}

  public NightStrip {
    runs = List.copyOf(runs);
  }

  /** The height the strip needs at a width, at most about {@code largest} (all CSS pixels). */
  public double heightFor(double width, double largest) {
    return StripLayout.fit(runs, width, largest).height(runs);
  }

  @Override
  public void draw(Graphics2D graphics, double width, double height) {
    StripLayout layout = StripLayout.fit(runs, width, height + 1);
    double y = 0;
    for (int i = 0; i < runs.size(); i++) {
      if (i > 0) {
        graphics.setColor(Palette.HAIRLINE);
        graphics.setStroke(new BasicStroke(0.7f));
        graphics.draw(new Line2D.Double(0, y + 4, width, y + 4));
        y += StripLayout.RUN_GAP;
      }
      y = drawRun(graphics, runs.get(i), layout, y);
    }
  }

  private static double drawRun(Graphics2D graphics, Run run, StripLayout layout, double firstTop) {
    double top = firstTop;
    for (int from = 0; from < run.items().size(); from += layout.perLine()) {
      int to = Math.min(run.items().size(), from + layout.perLine());
      double middle = top + layout.nameRoom(run) + layout.pitch() / 2;
      for (int place = from; place < to; place++) {
        drawItem(graphics, run.items().get(place), layout.x(place), middle, layout.pitch());
      }
      graphics.setFont(ReportFonts.sans(StripLayout.FONT_SIZE));
      drawTimes(graphics, run, layout, middle, from, to);
      if (layout.nameRoom(run) > 0) {
        StripNames.draw(graphics, run.spans(), layout, top, from, to - 1);
      }
      top += layout.lineHeight(run);
    }
    return top;
  }

  private static void drawItem(Graphics2D graphics, Item item, double x, double y, double pitch) {
    item.mark().draw(graphics, x, y, pitch * SIGN_SHARE);
    if (item.keep()) {
      graphics.setColor(Palette.SHARP);
      double thick = Math.max(0.8, pitch * 0.1);
      graphics.fill(
          new Rectangle2D.Double(x - pitch * 0.36, y + pitch * 0.54, pitch * 0.72, thick));
    }
    if (item.isBreak()) {
      graphics.setColor(Palette.MUTED);
      graphics.setStroke(new BasicStroke(0.6f));
      double at = x - pitch / 2;
      graphics.draw(new Line2D.Double(at, y - pitch * 0.5, at, y + pitch * 0.62));
    }
  }

  /** Along the line; of dense lines only at its head. */
  private static void drawTimes(
      Graphics2D graphics, Run run, StripLayout layout, double middle, int from, int to) {
    graphics.setColor(Palette.MUTED);
    if (layout.isDense()) {
      if (from / layout.perLine() % layout.linesPerTime(run) == 0) {
        graphics.drawString(firstTime(run, from, to), 0f, (float) Math.max(8, middle + 3.4));
      }
      return;
    }
    double freeFrom = 0;
    float base = (float) (middle + layout.pitch() * 0.66 + 9.5);
    for (int place = from; place < to; place++) {
      String time = run.items().get(place).time();
      double x = layout.x(place) - layout.pitch() * 0.36;
      double wide = TextMeasure.width(graphics.getFont(), time);
      boolean isWanted = (place - from) % every(layout, wide) == 0;
      if (isWanted && x >= freeFrom && x + wide <= layout.x(layout.perLine() - 1) + WORDS_APART) {
        graphics.drawString(time, (float) x, base);
        freeFrom = x + wide + WORDS_APART;
      }
    }
  }

  private static String firstTime(Run run, int from, int to) {
    return run.items().subList(from, to).stream()
        .map(Item::time)
        .filter(time -> !time.isEmpty())
        .findFirst()
        .orElse("");
  }

  /** Each so many frames have their time: 1, 2, 5, 10 … as words fit. */
  private static int every(StripLayout layout, double wide) {
    double least = (2.2 * wide + WORDS_APART) / layout.pitch();
    for (int every : new int[] {1, 2, 5, 10}) {
      if (every >= least) {
        return every;
      }
    }
    return 20;
  }
}
