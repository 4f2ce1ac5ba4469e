package rondure.night;

import rondure.base.Orientation;
import rondure.blur.FieldShape;
import rondure.sky.PlateScale;
import rondure.stars.StarField;

/** Puts the stars of a frame into the few numbers that people see. */
final class FrameShapes {
  private FrameShapes() {}

  static FrameShape of(Shot shot, StarField field, FieldShape shape) {
    Orientation orientation = shot.facts().orientation();
    double angle = orientation.display(shape.moments()).positionAngleRad();
    return new FrameShape(
        shape.starCount(),
        shape.fwhmPx(),
        shot.focalLengthPx().map(px -> shape.fwhmPx() * PlateScale.arcsecPerPx(px)),
        shape.moments().rmsWidthPx(),
        shape.roundness(),
        shape.moments(),
        Math.toDegrees(angle),
        shape.coherence(),
        shape.fwhmCentrePx(),
        shape.fwhmEdgePx(),
        field.sky().levelFraction());
  }
}
