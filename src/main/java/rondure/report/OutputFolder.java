package rondure.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rondure.base.EndHook;
import rondure.base.FileTrouble;
import rondure.base.PathNames;

/**
 * The folder that holds a run's results, and nothing that the program did not write.
 *
 * <p>A marker file makes the folder ours; a lock keeps a second run out. Files are written into a
 * hidden folder inside and moved into place together by {@link #publish()}, so that an output is
 * there whole or not at all. It closes itself when the program ends before that. Only the folder
 * {@link #measured()} is filled while a run goes on, and kept when it is stopped.
 */
public final class OutputFolder implements AutoCloseable {

  /** Name of the file that marks a folder as ours. */
  public static final String MARKER = ".rondure-output";

  private static final Logger LOG = LoggerFactory.getLogger(OutputFolder.class);
  private static final String PARTIAL = ".rondure-partial";
  private static final String MEASURED = "measured";

  /** Pages are written in pieces of a few bytes. */
  private static final int BUFFER_BYTES = 1 << 16;

  private final Path folder;
  private final List<Path> madeFolders;
  private final RunLock lock;
  private final EndHook endHook = new EndHook(this::end, "output-shutdown");
  private final Map<String, String> written = new LinkedHashMap<>();
  private final List<String> renewed = new ArrayList<>();
  private final List<String> movedAside = new ArrayList<>();
  private Optional<WrittenFiles> ours = Optional.empty();
  private boolean marked;
  private boolean published;
  private boolean closed;

  private OutputFolder(Path folder, List<Path> madeFolders, RunLock lock) {
    this.folder = folder;
    this.madeFolders = madeFolders;
    this.lock = lock;
  }

  /** What a run writes into its folder. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Opens the folder that the user named: new, empty, or ours.
   *
   * @throws OutputProblem when it holds foreign files, is in use, or cannot be written
   */
  public static OutputFolder named(Path folder) throws OutputProblem {
    return open(OutputPlace.named(folder));
  }

  /**
   * Opens the default folder of an input, as {@link OutputPlace#beside} finds it.
   *
   * @throws OutputProblem when no such folder can be made, or ours is in use
   */
  public static OutputFolder beside(Path input, Path currentFolder) throws OutputProblem {
    return open(OutputPlace.beside(input, currentFolder));
  }

  /**
   * Where runs with results in {@code place} keep measurements; neither need be there. Makes
   * nothing.
   */
  public static Path measuredIn(Path place) {
    return place.toAbsolutePath().normalize().resolve(MEASURED);
  }

  /** The folder, absolute. */
  public Path path() {
    return folder;
  }

  /** Where measurements are kept from run to run; made and filled by who keeps them. */
  public Path measured() {
    return measuredIn(folder);
  }

  /**
   * Writes one file aside; it appears under {@code name} at {@link #publish()}.
   *
   * @param name its name, or its path below the folder with forward slashes
   * @throws InterruptedIOException when the folder was closed because the program ends
   * @throws IOException when the disk is full or the folder vanished
   */
  public void write(String name, Content content) throws IOException {
    MessageDigest digest = WrittenFiles.sha256();
    try (OutputStream out = begun(name, digest)) {
      content.writeTo(out);
    }
    written(name, HexFormat.of().formatHex(digest.digest()));
  }

  private synchronized OutputStream begun(String name, MessageDigest digest) throws IOException {
    requireOpen();
    Path partial = PathNames.below(folder.resolve(PARTIAL), name);
    Files.createDirectories(partial.getParent());
    return new BufferedOutputStream(
        new DigestOutputStream(Files.newOutputStream(partial), digest), BUFFER_BYTES);
  }

  private synchronized void written(String name, String digest) throws IOException {
    requireOpen();
    written.put(name, digest);
  }

  /**
   * What stood in the way without being ours and has another name now, a sentence for each file.
   */
  public synchronized List<String> movedAside() {
    return List.copyOf(movedAside);
  }

  /**
   * Makes a folder below this one hold what this run writes into it and nothing of earlier runs,
   * from {@link #publish()} on. What others put in or changed there stays.
   */
  public synchronized void renew(String subfolder) {
    renewed.add(subfolder);
  }

  /**
   * Moves everything written since the last time into place, each file whole. A file in its place
   * that is not as we wrote it gets another name.
   */
  public synchronized void publish() throws IOException {
    requireOpen();
    WrittenFiles files = ours.orElseThrow();
    written.forEach(files::add);
    mark(files);
    Set<Path> fresh = new HashSet<>();
    for (String name : written.keySet()) {
      fresh.add(moved(name, files));
    }
    for (String subfolder : renewed) {
      removeEarlier(subfolder, fresh, files);
    }
    written.forEach(files::settle);
    mark(files);
    written.clear();
    renewed.clear();
    published = true;
  }

  /** Lists our files in the marker, whole. */
  private void mark(WrittenFiles files) throws IOException {
    Path partial = Files.createDirectories(folder.resolve(PARTIAL));
    Path list = Files.write(partial.resolve(MARKER), files.text(written.keySet()));
    moveWhole(list, folder.resolve(MARKER));
  }

  private Path moved(String name, WrittenFiles files) throws IOException {
    Path target = PathNames.below(folder, name);
    Files.createDirectories(target.getParent());
    if (files.isForeign(name)) {
      movedAside.add(files.moveAside(name));
    }
    moveWhole(PathNames.below(folder.resolve(PARTIAL), name), target);
    return target;
  }

  private void removeEarlier(String subfolder, Set<Path> fresh, WrittenFiles files)
      throws IOException {
    if (!files.isKnown()) {
      FolderTree.deleteAllBut(fresh, PathNames.below(folder, subfolder));
      return;
    }
    for (Path file : files.unchangedBelow(subfolder)) {
      if (!fresh.contains(file)) {
        Files.delete(file);
        FolderTree.unmake(between(file));
      }
    }
  }

  private void requireOpen() throws InterruptedIOException {
    if (closed) {
      throw new InterruptedIOException("the run was stopped while it wrote its results");
    }
  }

  /** Removes what was not published, and the folders made for it when they stay empty. */
  @Override
  public void close() {
    endHook.remove();
    end();
  }

  private synchronized void end() {
    if (closed) {
      return;
    }
    closed = true;
    try {
      FolderTree.delete(folder.resolve(PARTIAL));
      lock.release();
      if (marked && !published) {
        takeBack();
      }
    } catch (IOException e) {
      LOG.debug("{} not left clean", folder, e);
    }
  }

  /**
   * Undoes what this run made of a folder that was not ours before; what others put in stays. With
   * measurements in it the folder stays ours, so that the next run can go on from them.
   */
  private void takeBack() throws IOException {
    for (String name : written.keySet()) {
      Path file = PathNames.below(folder, name);
      Files.deleteIfExists(file);
      FolderTree.unmake(between(file));
    }
    if (Files.isDirectory(measured(), LinkOption.NOFOLLOW_LINKS) && !removedEmpty(measured())) {
      return;
    }
    Files.deleteIfExists(folder.resolve(MARKER));
    FolderTree.unmake(madeFolders);
  }

  /** The folders between a file and this one, innermost first. */
  private List<Path> between(Path file) {
    return Stream.iterate(file.getParent(), at -> !at.equals(folder), Path::getParent).toList();
  }

  private static boolean removedEmpty(Path inner) throws IOException {
    try {
      Files.delete(inner);
      return true;
    } catch (DirectoryNotEmptyException holdsSome) {
      return false;
    }
  }

  /**
   * Opens a folder that {@link OutputPlace} found.
   *
   * @throws OutputProblem when it is in use or cannot be written
   */
  public static OutputFolder open(Path folder) throws OutputProblem {
    Path absolute = folder.toAbsolutePath().normalize();
    try {
      List<Path> made = FolderTree.make(absolute);
      OutputFolder output = new OutputFolder(absolute, made, locked(absolute, made));
      output.claim();
      return output;
    } catch (IOException e) {
      throw new OutputProblem(
          "Cannot write to "
              + absolute
              + " ("
              + FileTrouble.words(e)
              + "); name another folder with --out.",
          e);
    }
  }

  private static RunLock locked(Path folder, List<Path> made) throws OutputProblem, IOException {
    try {
      return RunLock.of(folder);
    } catch (IOException e) {
      FolderTree.unmake(made);
      throw e;
    }
  }

  /** Marks the folder as ours and clears what a killed run left in it. */
  private void claim() throws IOException {
    try {
      endHook.add();
      marked = !Files.exists(folder.resolve(MARKER));
      FolderTree.delete(folder.resolve(PARTIAL));
      WrittenFiles files = WrittenFiles.of(folder);
      if (marked) {
        Files.write(folder.resolve(MARKER), files.text(Set.of()));
      }
      ours = Optional.of(files);
    } catch (IOException | IllegalStateException e) {
      close();
      throw e;
    }
  }

  private static void moveWhole(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
