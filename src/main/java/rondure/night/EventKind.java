package rondure.night;

/** What can happen in a night. Each constant says what its sizes are called. */
public enum EventKind {
  /** jumpPx: the camera was knocked. */
  KNOCK,
  /** jumpPx: the camera was aimed anew. */
  RE_AIM,
  /** wideningRatio (most), frameCount: wind shook the camera. */
  GUSTS,
  /** wideningRatio: shaken in the first frame after a pause. */
  HAND_ON_SHUTTER,
  /** driftPxPerMin, angleDeg (90 = down, as displayed): the head sags or turns. */
  DROOP,
  /** growthPercentPerHour, and growthPercentPerDegree where the temperature is known. */
  FOCUS_CREEP,
  /** widthRatio after over before. */
  FOCUS_KNOCKED,
  /** lostMag (most): light lost more and more, until the end. */
  DEW,
  /** lostMag (most): light lost for a while. */
  CLOUD,
  /** brighterMag (most): moon, twilight or lit cloud. */
  SKY_BRIGHTER,
  /** exposureBeforeSeconds, exposureAfterSeconds. */
  EXPOSURE_CHANGED,
  /** fNumberBefore, fNumberAfter. */
  APERTURE_CHANGED,
  /** driftPxPerMin, angleDeg: the mount does not follow the sky exactly. */
  TRACKING_ERROR
}
