package rondure;

/** Hears how far a run is; called on the thread of {@link Pipeline#run()}. */
public interface Progress {

  /** Everything is found; the long work begins. */
  void start(RunStart start);

  /** A stage of {@code total} steps begins. */
  void begin(String stage, int total);

  /** One more step of the stage is done. */
  void step();

  /** The stage is over. */
  void end();

  /** A sentence for the user about a trouble. */
  void say(String sentence);
}
