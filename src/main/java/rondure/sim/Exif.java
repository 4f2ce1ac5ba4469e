package rondure.sim;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** What a camera writes about an exposure (Exif 3.0, CIPA DC-008, tags in its tables 4 to 8). */
final class Exif {
  static final int MAKE = 0x010F;
  static final int MODEL = 0x0110;
  static final int ORIENTATION = 0x0112;
  static final int SOFTWARE = 0x0131;
  static final int EXIF_DIRECTORY = 0x8769;
  private static final int CENTIMETRE = 3;
  private static final double FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);

  private Exif() {}

  /** Fills a main directory with the camera's part and the Exif directory; nothing if left out. */
  static void describe(SimFrame frame, Ifd main) {
    NightPlan plan = frame.plan();
    if (plan.files().withoutExif()) {
      return;
    }
    main.ascii(MAKE, plan.camera().maker());
    main.ascii(MODEL, plan.camera().model());
    main.shorts(ORIENTATION, aim(frame).held().exifValue());
    main.ascii(SOFTWARE, "Rondure night simulator");
    main.directory(EXIF_DIRECTORY, directory(frame));
  }

  private static Ifd directory(SimFrame frame) {
    NightPlan plan = frame.plan();
    Exposure exposure = frame.exposure();
    Ifd exif = new Ifd().undefined(0x9000, "0232");
    long millis = Math.round(exposure.startSeconds() * 1000);
    LocalDateTime start = plan.startTime().plusNanos(millis * 1_000_000);
    exif.ascii(0x9003, TIME.format(start));
    if (!plan.files().withoutSubSeconds()) {
      exif.ascii(0x9291, String.format(Locale.ROOT, "%03d", start.getNano() / 1_000_000));
    }
    if (!plan.files().withoutOffset()) {
      exif.ascii(0x9011, offset(plan.utcOffsetMinutes()));
    }
    exif.rationals(0x829A, exposure.nominalSeconds());
    exif.rationals(0x829D, exposure.fNumber());
    exif.shorts(0x8827, (int) Math.min(65535, Math.round(exposure.iso())));
    exif.rationals(0x920A, plan.lens().focalLengthMm());
    exif.shorts(0xA405, (int) Math.round(equivalentMm(plan)));
    double perCentimetre = 10_000 / plan.camera().pixelPitchMicrons();
    exif.rationals(0xA20E, perCentimetre);
    exif.rationals(0xA20F, perCentimetre);
    exif.shorts(0xA210, CENTIMETRE);
    exif.ascii(0xA434, plan.lens().model());
    if (!plan.temperatureC().isEmpty()) {
      double minutes = exposure.midSeconds() / 60;
      double degrees = TimePoint.at(plan.temperatureC(), minutes, 0);
      exif.signedRationals(0x9400, Math.rint(degrees * 10) / 10);
    }
    return exif;
  }

  /** The aim in force during a frame. */
  private static AimPlan aim(SimFrame frame) {
    AimPlan aim = frame.plan().aim();
    for (NightEvent event : frame.plan().events()) {
      if (event instanceof NightEvent.ReAim reAim && reAim.frame() <= frame.exposure().number()) {
        aim = reAim.aim();
      }
    }
    return aim;
  }

  private static double equivalentMm(NightPlan plan) {
    CameraPlan camera = plan.camera();
    double diagonalMm = 2 * camera.cornerRadiusPx() * camera.pixelPitchMicrons() / 1000;
    return plan.lens().focalLengthMm() * FULL_FRAME_DIAGONAL_MM / diagonalMm;
  }

  private static String offset(int minutes) {
    int size = Math.abs(minutes);
    return String.format(Locale.ROOT, "%s%02d:%02d", minutes < 0 ? "-" : "+", size / 60, size % 60);
  }
}
