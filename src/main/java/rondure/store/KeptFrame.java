package rondure.store;

import rondure.base.JpegPicture;
import rondure.crew.FrameMeasurement;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.StarField;

/**
 * What a record keeps of a frame: all that comes from its pixels. The facts are read anew in every
 * run, because the user may change them.
 *
 * @param linearity how the pixels became linear
 * @param field the stars
 * @param thumbnail small picture in display orientation
 */
record KeptFrame(Linearity linearity, StarField field, JpegPicture thumbnail) {

  static KeptFrame of(FrameMeasurement measurement) {
    return new KeptFrame(measurement.linearity(), measurement.field(), measurement.thumbnail());
  }

  FrameMeasurement with(ShotFacts facts) {
    return new FrameMeasurement(facts, linearity, field, thumbnail);
  }
}
