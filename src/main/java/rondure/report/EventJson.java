package rondure.report;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import rondure.night.Event;
import rondure.night.NightBook;
import rondure.night.NightFrame;

/** One event of night.json. */
final class EventJson {
  private EventJson() {}

  static ObjectNode of(Event event, NightBook book) {
    NightFrame first = book.frames().get(event.firstFrame());
    NightFrame last = book.frames().get(event.lastFrame());
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("kind", FrameFields.spelled(event.kind()));
    node.put("scene", event.sceneNumber());
    node.set(
        "nightIndex", first.nightIndex().map(JsonNodeFactory.instance::numberNode).orElse(null));
    node.put("firstFile", first.file());
    node.put("lastFile", last.file());
    node.put("start", FrameFields.time(first).orElse(null));
    node.put("end", FrameFields.time(last).orElse(null));
    ObjectNode sizes = node.putObject("sizes");
    event
        .sizes()
        .forEach((name, value) -> sizes.put(name, Rounded.of(Optional.of(value)).orElse(null)));
    return node;
  }
}
