package rondure.report.layout;

import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.FSObjectDrawerFactory;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.w3c.dom.Element;
import rondure.base.JpegPicture;
import rondure.report.picture.Picture;

/**
 * The named drawings and photographs that a page can ask for; threads may add them side by side.
 *
 * <p>In a template: {@code <object type="rondure/picture" data="NAME" alt="…"/>} for a drawing,
 * {@code <img src="photo:NAME" alt="…"/>} for a photograph.
 */
public final class Pictures implements FSObjectDrawerFactory {
  static final String TYPE = "rondure/picture";
  private final Map<String, Picture> drawings = new ConcurrentHashMap<>();
  private final Map<String, JpegPicture> photographs = new ConcurrentHashMap<>();

  /** Adds a drawing under a name. */
  public void add(String name, Picture drawing) {
    drawings.put(name, drawing);
  }

  /** Adds a photograph under a name. */
  public void add(String name, JpegPicture photograph) {
    photographs.put(name, photograph);
  }

  Optional<JpegPicture> photograph(String name) {
    return Optional.ofNullable(photographs.get(name));
  }

  boolean hasDrawing(String name) {
    return drawings.containsKey(name);
  }

  @Override
  public boolean isReplacedObject(Element element) {
    return element.getNodeName().equals("object") && TYPE.equals(element.getAttribute("type"));
  }

  @Override
  public FSObjectDrawer createDrawer(Element element) {
    Picture drawing = drawings.get(element.getAttribute("data"));
    if (drawing == null) {
      return null;
    }
    return (tag, x, y, width, height, device, context, dotsPerPixel) -> {
      double widthPx = width / dotsPerPixel;
      double heightPx = height / dotsPerPixel;
      device.drawWithGraphics(
          (float) x,
          (float) y,
          (float) widthPx,
          (float) heightPx,
          graphics -> drawing.draw(graphics, Math.floor(widthPx), Math.floor(heightPx)));
      return null;
    };
  }
}
