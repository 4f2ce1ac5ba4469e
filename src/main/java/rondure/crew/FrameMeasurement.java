package rondure.crew;

import rondure.base.JpegPicture;
import rondure.intake.Linearity;
import rondure.intake.ShotFacts;
import rondure.stars.StarField;

/**
 * What a worker gives back for one file: a pure function of the file and the settings.
 *
 * @param facts what the file says about its exposure (before the user's overrides)
 * @param linearity how the pixels became linear
 * @param field the stars
 * @param thumbnail small picture in display orientation
 */
public record FrameMeasurement(
    ShotFacts facts, Linearity linearity, StarField field, JpegPicture thumbnail) {}
