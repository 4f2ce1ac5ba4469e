package rondure.crew;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One place of the crew: does job after job with a worker of its own, replaced when it is lost. */
final class Member {
  private static final Logger LOG = LoggerFactory.getLogger(Member.class);

  /**
   * One file's work.
   *
   * @param request what to ask
   * @param heapMiB heap that it needs
   * @param limit time that it gets
   * @param answerOf takes what was asked for from a DONE; called by the member's thread
   */
  record Job<T>(
      Request request, int heapMiB, TimeLimit limit, Function<Answer, Optional<T>> answerOf) {}

  private final Roster roster;
  private final int triesMax;
  private Optional<Worker> worker = Optional.empty();

  Member(Roster roster, int triesMax) {
    this.roster = roster;
    this.triesMax = triesMax;
  }

  /** Takes jobs from the batch until there are no more. */
  <T> void work(Batch<T> batch, IntFunction<Job<T>> jobs) {
    try {
      for (int i = batch.take(); i >= 0; i = batch.take()) {
        batch.put(i, outcome(jobs.apply(i), batch));
      }
    } catch (CrewProblem e) {
      batch.fail(e);
    } catch (RuntimeException e) {
      batch.fail(e);
    } catch (InterruptedException e) {
      batch.stop();
    } catch (Error e) {
      batch.fail(new IllegalStateException("a member of the crew failed: " + e, e));
    }
  }

  /** Asks until there is an answer or the tries are used up; a full heap is doubled once more. */
  private <T> Outcome<T> outcome(Job<T> job, Batch<T> batch)
      throws CrewProblem, InterruptedException {
    int heapMiB = job.heapMiB();
    int tries = 0;
    while (true) {
      tries++;
      try {
        Worker ready = readyWorker(heapMiB);
        if (batch.isStopped()) {
          return new Outcome.Failed<>("the work was stopped");
        }
        return translate(ready.ask(job.request(), job.limit()), job.answerOf());
      } catch (WorkerLost e) {
        dismiss();
        if (tries >= triesMax || !e.mayBeChance() || batch.isStopped()) {
          return new Outcome.Failed<>(e.reason(job.request().work()));
        }
        heapMiB = e.how() == WorkerLost.How.OUT_OF_MEMORY ? 2 * heapMiB : heapMiB;
      } finally {
        if (heapMiB > job.heapMiB()) {
          dismiss();
        }
      }
    }
  }

  private static <T> Outcome<T> translate(Answer answer, Function<Answer, Optional<T>> answerOf) {
    return switch (answer.kind()) {
      case DONE -> new Outcome.Done<>(answerOf.apply(answer).orElseThrow());
      case PROBLEM -> new Outcome.Failed<>(answer.text());
      default -> {
        LOG.debug("fault of the program in a worker: {}", answer.text());
        yield new Outcome.Failed<>(
            "a fault of this program kept it from being measured ("
                + answer.text()
                + "); listed but not measured: please report it");
      }
    };
  }

  /** The present worker when it lives and has the heap, else a new one. */
  private Worker readyWorker(int heapMiB) throws WorkerLost, CrewProblem, InterruptedException {
    if (worker.isPresent() && worker.get().isAlive() && worker.get().heapMiB() >= heapMiB) {
      return worker.get();
    }
    dismiss();
    Worker fresh = roster.start(heapMiB);
    worker = Optional.of(fresh);
    return fresh;
  }

  private void dismiss() {
    worker.ifPresent(roster::retire);
    worker = Optional.empty();
  }
}
