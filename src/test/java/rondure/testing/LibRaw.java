package rondure.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import rondure.intake.RawSupport;

/** What the tests of RAW files need of the machine. */
public final class LibRaw {
  private LibRaw() {}

  /** Skips the test with the program's own words where LibRaw cannot be used. */
  public static void isThere() {
    RawSupport.Status status = RawSupport.status();
    String reason = status instanceof RawSupport.Absent absent ? absent.message() : "";
    assumeTrue(status instanceof RawSupport.Available, reason);
  }
}
