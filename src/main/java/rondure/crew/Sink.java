package rondure.crew;

/**
 * Takes the outcomes of a batch, on the thread that asked for it, in the order of the files.
 *
 * @param <T> the kind of answer
 */
@FunctionalInterface
public interface Sink<T> {

  /**
   * @param index place of the file in the batch, 0, 1, 2, … without gaps
   * @param outcome its answer, or the reason why there is none
   */
  void accept(int index, Outcome<T> outcome);
}
