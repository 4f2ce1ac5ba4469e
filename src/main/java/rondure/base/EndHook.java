package rondure.base;

/** Work that must be done even when the program is ended before its time. */
public final class EndHook {
  private final Thread thread;

  /**
   * @param name of the thread that does it then
   */
  public EndHook(Runnable work, String name) {
    this.thread = new Thread(work, name);
  }

  /**
   * From now on the end of the program does the work.
   *
   * @throws IllegalStateException when the program is ending already
   */
  public void add() {
    Runtime.getRuntime().addShutdownHook(thread);
  }

  /** Takes that back; when the program is ending the work is being done already. */
  public void remove() {
    try {
      Runtime.getRuntime().removeShutdownHook(thread);
    } catch (IllegalStateException e) {
      // The program is ending: the hook is at work.
    }
  }
}
