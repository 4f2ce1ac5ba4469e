package rondure.intake;

/** The colours of a picture; a picture without colour has only GREEN. */
enum Channel {
  RED,
  GREEN,
  BLUE
}
