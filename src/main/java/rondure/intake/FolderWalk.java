package rondure.intake;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import rondure.base.NaturalOrder;
import rondure.base.PathNames;

/** Walks through folders and gathers what it meets; each folder and each file is taken once. */
final class FolderWalk {
  private static final int DEPTH_MAX = 64;
  private static final String OUTPUT_MARKER = ".rondure-output";
  private static final String OWN_HIDDEN = ".rondure-";
  private static final Set<String> SYSTEM_FOLDERS =
      Set.of(
          "__macosx",
          "@eadir",
          "lost+found",
          "$recycle.bin",
          "recycler",
          "system volume information",
          "thumbnails",
          "_thumbnails",
          "thumbs");

  private final List<FoundFile> files = new ArrayList<>();
  private final Map<String, List<String>> leftOut = new TreeMap<>();
  private final List<String> troubles = new ArrayList<>();
  private final Set<Path> seen = new HashSet<>();
  private final Set<String> names = new HashSet<>();

  /** Everything met so far, pictures in natural order of their names. */
  ScanResult result() {
    files.sort(Comparator.comparing(FoundFile::relativeName, NaturalOrder.OF_NAMES));
    return new ScanResult(files, leftOut, troubles);
  }

  void trouble(String sentence) {
    troubles.add(sentence);
  }

  /** Takes a picture file, unless it was met before. */
  void file(Path file, String name, ImageFormat format) {
    if (seen.add(identity(file))) {
      files.add(new FoundFile(file, free(name), format));
    } else {
      leaveOut("again", name);
    }
  }

  /** Takes everything below a folder; {@code prefix} names the folder, empty for none. */
  void folder(Path folder, String prefix) {
    folder(folder, prefix, 0);
  }

  private void folder(Path folder, String name, int depth) {
    if (depth > DEPTH_MAX) {
      troubles.add(name + ": folders are nested more than " + DEPTH_MAX + " deep; left out here.");
      return;
    }
    if (Files.exists(folder.resolve(OUTPUT_MARKER)) || !seen.add(identity(folder))) {
      return;
    }
    for (Path entry : entries(folder, name)) {
      String entryName = (name.isEmpty() ? "" : name + "/") + PathNames.last(entry);
      if (hidden(entry)) {
        leaveOutHidden(entry, entryName);
        continue;
      }
      if (Files.isDirectory(entry)) {
        if (!SYSTEM_FOLDERS.contains(entry.getFileName().toString().toLowerCase(Locale.ROOT))) {
          folder(entry, entryName, depth + 1);
        }
      } else {
        entry(entry, entryName);
      }
    }
  }

  private List<Path> entries(Path folder, String name) {
    List<Path> entries = new ArrayList<>();
    String shown = name.isEmpty() ? RootNames.tail(folder, 1) : name;
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
      stream.forEach(entries::add);
    } catch (AccessDeniedException denied) {
      troubles.add(shown + ": this folder may not be read; change its permissions.");
    } catch (IOException | DirectoryIteratorException broken) {
      troubles.add(shown + ": this folder could not be read to its end; check the disk or card.");
    }
    entries.sort(Comparator.comparing(PathNames::last, NaturalOrder.OF_NAMES));
    return entries;
  }

  private void entry(Path file, String name) {
    if (Files.isSymbolicLink(file) && !Files.exists(file)) {
      troubles.add(name + ": this link leads nowhere; mend or delete it.");
    } else if (FileNames.isXmpSidecar(name)) {
      return;
    } else if (Files.isRegularFile(file)) {
      FileNames.format(name)
          .ifPresentOrElse(
              format -> file(file, name, format),
              () -> leaveOut(FileNames.ignoredKind(name), name));
    } else {
      leaveOut("special", name);
    }
  }

  private void leaveOut(String kind, String name) {
    leftOut.computeIfAbsent(kind, unused -> new ArrayList<>()).add(name);
  }

  /** What this program itself hides is nobody's: a run that was killed may have left it. */
  private void leaveOutHidden(Path entry, String name) {
    boolean own = PathNames.last(entry).startsWith(OWN_HIDDEN);
    if (!own && Files.isRegularFile(entry)) {
      leaveOut("hidden", name);
    }
  }

  /** Names that begin with a dot (AppleDouble companions too) and files the system hides. */
  private static boolean hidden(Path entry) {
    try {
      return entry.getFileName().toString().startsWith(".") || Files.isHidden(entry);
    } catch (IOException unknown) {
      return false;
    }
  }

  /** What is the same for all ways to one file: its path without links. */
  private static Path identity(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException unreadable) {
      return path;
    }
  }

  /** The name, or with a number behind it when another file is shown by the same characters. */
  private String free(String name) {
    String free = name;
    for (int i = 2; !names.add(free); i++) {
      free = name + " (" + i + ")";
    }
    return free;
  }
}
