package rondure.crew;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Heads of logs as the HotSpot virtual machine of Java 17 writes them. */
class CrashLogTest {

  @Test
  void theNativeLibraryThatFailedIsNamed() {
    String head =
        """
        #
        # A fatal error has been detected by the Java Runtime Environment:
        #
        #  SIGSEGV (0xb) at pc=0x00007f2a3c1d2e10, pid=4711, tid=4712
        #
        # JRE version: OpenJDK Runtime Environment (17.0.15+6) (build 17.0.15+6)
        # Problematic frame:
        # C  [libraw_r.so.20+0x9de10]  LibRaw::lossless_jpeg_load_raw()+0x1b0
        #
        """;
    assertEquals(new CrashLog(false, Optional.of("libraw_r.so.20")), CrashLog.parse(head));
    WorkerLost lost = WorkerLost.byExit(1, Optional.of(CrashLog.parse(head)), 512);
    assertEquals(
        "the decoder crashed (native fault in libraw_r.so.20) on this file;"
            + " listed but not measured: export it as a 16-bit TIFF",
        lost.reason(Request.Work.MEASURE));
  }

  @Test
  void lackOfSystemMemoryIsNotCalledACrash() {
    String head =
        """
        #
        # There is insufficient memory for the Java Runtime Environment to continue.
        # Native memory allocation (mmap) failed to map 134217728 bytes
        """;
    assertTrue(CrashLog.parse(head).outOfMemory());
    WorkerLost lost = WorkerLost.byExit(1, Optional.of(CrashLog.parse(head)), 512);
    assertEquals(WorkerLost.How.OUT_OF_MEMORY, lost.how());
  }
}
