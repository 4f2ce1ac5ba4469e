package rondure.report.layout;

import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLog;
import com.openhtmltopdf.util.XRLogger;
import java.util.logging.Level;

/** Keeps the layout library from printing; what matters of its log is heard as diagnostics. */
final class Silence implements XRLogger {
  static void keep() {
    XRLog.setLoggerImpl(new Silence());
    XRLog.setLoggingEnabled(true);
  }

  @Override
  public void log(String where, Level level, String message) {
    // Not printed.
  }

  @Override
  public void log(String where, Level level, String message, Throwable trouble) {
    // Not printed.
  }

  @Override
  public void setLevel(String logger, Level level) {
    // There is one: none.
  }

  @Override
  public boolean isLogLevelEnabled(Diagnostic diagnostic) {
    return false;
  }
}
