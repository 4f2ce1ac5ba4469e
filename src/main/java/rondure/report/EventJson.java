package rondure.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import rondure.night.Event;
import rondure.night.FrameSpan;
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
    node.set("startBetween", files(event.start(), book));
    node.set("endBetween", files(event.end(), book));
    ObjectNode sizes = node.putObject("sizes");
    event
        .sizes()
        .forEach((name, value) -> sizes.put(name, Rounded.of(Optional.of(value)).orElse(null)));
    return node;
  }

  private static ArrayNode files(FrameSpan span, NightBook book) {
    return JsonNodeFactory.instance
        .arrayNode()
        .add(book.frames().get(span.earliest()).file())
        .add(book.frames().get(span.latest()).file());
  }
}
