package rondure.intake;

import com.adobe.internal.xmp.XMPException;
import com.adobe.internal.xmp.XMPMeta;
import com.drew.metadata.Metadata;
import com.drew.metadata.xmp.XmpDirectory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * EXIF facts that a program left in XMP only, under their EXIF tag numbers (ISO 16684-2, the
 * namespaces {@code exif}, {@code exifEX}, {@code tiff} and {@code aux}). Orientation and sizes are
 * left out: what XMP says of them is often about an earlier state of the picture.
 */
final class XmpTags {
  private static final String EXIF = "http://ns.adobe.com/exif/1.0/";
  private static final String EXIF_EX = "http://cipa.jp/exif/1.0/";
  private static final String TIFF = "http://ns.adobe.com/tiff/1.0/";
  private static final String AUX = "http://ns.adobe.com/exif/1.0/aux/";

  private record Name(String namespace, String property) {}

  private static final Map<Integer, List<Name>> NAMES =
      Map.ofEntries(
          Map.entry(0x010F, List.of(new Name(TIFF, "Make"))),
          Map.entry(0x0110, List.of(new Name(TIFF, "Model"))),
          Map.entry(0x829A, List.of(new Name(EXIF, "ExposureTime"))),
          Map.entry(0x829D, List.of(new Name(EXIF, "FNumber"))),
          Map.entry(
              0x8827,
              List.of(
                  new Name(EXIF_EX, "PhotographicSensitivity"),
                  new Name(EXIF, "ISOSpeedRatings[1]"),
                  new Name(EXIF, "ISOSpeedRatings"))),
          Map.entry(0x9003, List.of(new Name(EXIF, "DateTimeOriginal"))),
          Map.entry(0x9201, List.of(new Name(EXIF, "ShutterSpeedValue"))),
          Map.entry(0x9202, List.of(new Name(EXIF, "ApertureValue"))),
          Map.entry(0x920A, List.of(new Name(EXIF, "FocalLength"))),
          Map.entry(0xA20E, List.of(new Name(EXIF, "FocalPlaneXResolution"))),
          Map.entry(0xA20F, List.of(new Name(EXIF, "FocalPlaneYResolution"))),
          Map.entry(0xA210, List.of(new Name(EXIF, "FocalPlaneResolutionUnit"))),
          Map.entry(0xA405, List.of(new Name(EXIF, "FocalLengthIn35mmFilm"))),
          Map.entry(0xA434, List.of(new Name(EXIF_EX, "LensModel"), new Name(AUX, "Lens"))));

  private final List<XMPMeta> packets = new ArrayList<>();

  XmpTags(Metadata metadata) {
    for (XmpDirectory directory : metadata.getDirectoriesOfType(XmpDirectory.class)) {
      if (directory.getXMPMeta() != null) {
        packets.add(directory.getXMPMeta());
      }
    }
  }

  /** The text of a tag, as XMP spells it. */
  Optional<String> text(int tag) {
    for (XMPMeta packet : packets) {
      for (Name name : NAMES.getOrDefault(tag, List.of())) {
        Optional<String> value = value(packet, name);
        if (value.isPresent()) {
          return value;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<String> value(XMPMeta packet, Name name) {
    try {
      return Optional.ofNullable(packet.getPropertyString(name.namespace(), name.property()))
          .filter(text -> !text.isBlank());
    } catch (XMPException damaged) {
      return Optional.empty();
    }
  }

  /** The number of a tag: XMP spells rationals as 20/1. */
  Optional<Double> number(int tag) {
    return text(tag).flatMap(XmpTags::parsed).filter(Double::isFinite);
  }

  private static Optional<Double> parsed(String text) {
    String[] parts = text.strip().split("/", 2);
    try {
      double above = Double.parseDouble(parts[0]);
      return Optional.of(parts.length == 1 ? above : above / Double.parseDouble(parts[1]));
    } catch (NumberFormatException damaged) {
      return Optional.empty();
    }
  }
}
