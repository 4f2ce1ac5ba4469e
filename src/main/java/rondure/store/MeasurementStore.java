package rondure.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rondure.base.FileTrouble;
import rondure.crew.FrameMeasurement;
import rondure.crew.Keeper;
import rondure.crew.MeasureJob;
import rondure.stars.StarSettings;

/**
 * The measurements of a night in a folder, a file each. Whatever cannot be read back exactly counts
 * as not there; whatever cannot be written costs nothing but the time to measure it again. Safe for
 * many threads; one run at a time holds the folder.
 *
 * <p>Files that could not be measured are not kept: most are told quickly, and memory, time or a
 * library that was missing may be there in the next run.
 */
public final class MeasurementStore implements Keeper {
  private static final Logger LOG = LoggerFactory.getLogger(MeasurementStore.class);

  private final Path place;
  private final StarSettings settings;
  private final boolean mayWrite;
  private final Set<String> needed = ConcurrentHashMap.newKeySet();
  private final AtomicReference<IOException> trouble = new AtomicReference<>();
  private String program = "";
  private Optional<RecordFolder> folder = Optional.empty();

  private MeasurementStore(Path place, StarSettings settings, boolean mayWrite) {
    this.place = place;
    this.settings = settings;
    this.mayWrite = mayWrite;
  }

  /**
   * The store in a folder, which is made when it is not there; where it cannot be used, a store
   * that keeps nothing and says so by {@link #trouble()}.
   *
   * @param place the folder; the one around it must be there
   * @param settings by which everything is measured in this run
   */
  public static MeasurementStore open(Path place, StarSettings settings) {
    MeasurementStore store = new MeasurementStore(place, settings, true);
    try {
      store.program = MeasuringProgram.identity();
      store.folder = Optional.of(RecordFolder.open(place));
    } catch (IOException e) {
      store.note(e);
    }
    return store;
  }

  /**
   * The store in a folder for a run that may not write: finds what is there and keeps nothing, nor
   * removes anything. Another run may be at work in the folder.
   *
   * @param place the folder, which need not be there
   * @param settings by which everything is measured in this run
   */
  public static MeasurementStore readOnly(Path place, StarSettings settings) {
    MeasurementStore store = new MeasurementStore(place, settings, false);
    try {
      store.program = MeasuringProgram.identity();
      store.folder = RecordFolder.existing(place);
    } catch (IOException nothingToRead) {
      LOG.debug("nothing read from {}", place, nothingToRead);
    }
    return store;
  }

  /** True when nothing can be found, so that looking would be in vain. */
  public boolean isEmpty() {
    return folder.map(RecordFolder::isEmpty).orElse(true);
  }

  /**
   * What was measured of these bytes before, with the facts of the present run.
   *
   * @param job the file and what is known of it now
   * @param contentDigest SHA-256 of all its bytes, hexadecimal
   */
  public Optional<FrameMeasurement> find(MeasureJob job, String contentDigest) {
    String key = key(job, contentDigest);
    try {
      Optional<byte[]> record = folder.isPresent() ? folder.get().read(key) : Optional.empty();
      if (record.isEmpty()) {
        return Optional.empty();
      }
      KeptFrame frame = RecordFile.unpack(key, record.get());
      needed.add(key);
      return Optional.of(frame.with(job.facts()));
    } catch (IOException doubtful) {
      LOG.debug("record {} is measured again", key, doubtful);
      return Optional.empty();
    }
  }

  @Override
  public void keep(MeasureJob job, String contentDigest, FrameMeasurement measurement) {
    if (!mayWrite) {
      return;
    }
    String key = key(job, contentDigest);
    needed.add(key);
    try {
      if (folder.isPresent()) {
        folder.get().write(key, RecordFile.pack(key, KeptFrame.of(measurement)));
      }
    } catch (IOException e) {
      note(e);
    }
  }

  /** Removes the records that this run neither found nor kept. */
  public void forgetOthers() {
    folder.filter(any -> mayWrite).ifPresent(records -> records.removeUnless(needed::contains));
  }

  /** One sentence when measurements could not be kept. */
  public Optional<String> trouble() {
    return Optional.ofNullable(trouble.get())
        .map(
            first ->
                "Measurements cannot be kept in "
                    + place
                    + " ("
                    + FileTrouble.words(first)
                    + "); the next run measures those frames again.");
  }

  private String key(MeasureJob job, String contentDigest) {
    return RecordKey.of(contentDigest, job, settings, program).digest();
  }

  private void note(IOException problem) {
    LOG.debug("not kept in {}", place, problem);
    trouble.compareAndSet(null, problem);
  }
}
