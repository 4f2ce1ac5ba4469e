package rondure.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rondure.night.FocusSeries;
import rondure.night.FocusSeries.Curve;
import rondure.night.FocusSeries.Others;
import rondure.night.FocusSeries.Point;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/** One focus test series of night.json. */
final class SeriesJson {
  private SeriesJson() {}

  static ObjectNode of(FocusSeries series, NightBook book) {
    NightFrame best = book.frames().get(series.bestFrame());
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("number", series.number());
    node.put("scene", series.sceneNumber());
    node.set(
        "nightIndex", best.nightIndex().map(JsonNodeFactory.instance::numberNode).orElse(null));
    node.put("named", series.named());
    node.put("steps", FrameFields.spelled(series.steps()));
    node.put("ending", FrameFields.spelled(series.ending()));
    node.put("bestFile", best.file());
    node.set("curve", series.curve().map(curve -> curve(curve, series, book)).orElse(null));
    ArrayNode frames = node.putArray("frames");
    for (Point point : series.points()) {
      ObjectNode frame = frames.addObject();
      frame.put("file", file(book, point));
      put(frame, "position", point.position());
      put(frame, "momentPx2", point.px2());
      put(frame, "momentErrorPx2", point.errorPx2());
    }
    ArrayNode onTheWay = node.putArray("filesOnTheWay");
    series.onTheWay().forEach(frame -> onTheWay.add(book.frames().get(frame).file()));
    ArrayNode others = node.putArray("otherFrames");
    for (Others stretch : series.others()) {
      ObjectNode other = others.addObject();
      other.put("when", stretch.after() ? "after" : "before");
      other.put("frameCount", stretch.frames());
      other.put("side", FrameFields.spelled(stretch.side()));
      put(other, "discPx", stretch.discPx());
    }
    return node;
  }

  private static ObjectNode curve(Curve curve, FocusSeries series, NightBook book) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    put(node, "bestPosition", curve.at());
    put(node, "bestPositionError", curve.atError());
    put(node, "leastMomentPx2", curve.leastPx2());
    put(node, "discPxPerPosition", curve.discPxPerStep());
    node.put("fileBelow", series.below(curve.at()).map(p -> file(book, p)).orElse(null));
    node.put("fileAbove", series.above(curve.at()).map(p -> file(book, p)).orElse(null));
    return node;
  }

  /** Numbers of the series by index of their frames in the book. */
  static Map<Integer, Integer> members(List<FocusSeries> all) {
    Map<Integer, Integer> members = new HashMap<>();
    for (FocusSeries series : all) {
      series.members().forEach(frame -> members.put(frame, series.number()));
    }
    return members;
  }

  private static String file(NightBook book, Point point) {
    return book.frames().get(point.frame()).file();
  }

  private static void put(ObjectNode node, String key, double value) {
    node.put(key, Rounded.of(Optional.of(value)).orElse(null));
  }
}
