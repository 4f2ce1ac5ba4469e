package rondure.report.sidecar;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rondure.base.PathNames;
import rondure.intake.FoundFile;
import rondure.intake.ImageFormat;
import rondure.night.NightFrame;

/**
 * Finds the sidecars of a frame by their names.
 *
 * <p>Two customs are alive: the picture's name with its extension exchanged ({@code IMG_1.xmp}, XMP
 * Specification, September 2005, "External Storage of Metadata"), which the files of a RAW+JPEG
 * pair share, and with .xmp behind it ({@code IMG_1.NEF.xmp}). Sidecars that are there are used, of
 * either custom and of every copy of the frame. Where the frame's own file has none, the folder's
 * custom decides, else the first. A short name that several exposures of a folder would share
 * belongs to the only RAW among them, and to none when that does not tell.
 */
final class SidecarNames {
  static final String EXTENSION = ".xmp";

  private final PictureFolders folders = new PictureFolders();
  private final Map<String, FoundFile> files = new HashMap<>();
  private final Map<String, Set<String>> exposuresOfShortName = new HashMap<>();
  private final Map<String, Set<String>> rawsOfShortName = new HashMap<>();
  private final Set<Path> longNamed = new HashSet<>();
  private final Set<Path> shortNamed = new HashSet<>();

  /**
   * @param frames the exposures
   * @param found every file that they may consist of
   */
  SidecarNames(List<NightFrame> frames, List<FoundFile> found) {
    found.forEach(file -> files.put(file.relativeName(), file));
    frames.forEach(this::learnShortNames);
    frames.forEach(this::learnCustoms);
  }

  /** Every sidecar of a frame that is there, and one to be made where its own file has none. */
  List<SidecarPlace> of(NightFrame frame) {
    List<FoundFile> members = members(frame);
    if (members.isEmpty()) {
      return List.of();
    }
    FoundFile own = own(members);
    List<SidecarPlace> places = new ArrayList<>();
    Set<Path> seen = new LinkedHashSet<>();
    if (existing(frame, own).isEmpty()) {
      places.add(place(own, chosen(frame, own), false));
    }
    for (FoundFile member : members) {
      existing(frame, member).stream()
          .filter(seen::add)
          .forEach(path -> places.add(place(member, path, true)));
    }
    return places;
  }

  /** The folders of all pictures, where sidecars may lie. */
  Set<Path> folders() {
    return files.values().stream()
        .map(file -> file.path().getParent())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private void learnShortNames(NightFrame frame) {
    for (FoundFile file : members(frame)) {
      note(exposuresOfShortName, file, frame);
      if (file.formatByName() == ImageFormat.RAW) {
        note(rawsOfShortName, file, frame);
      }
    }
  }

  private static void note(Map<String, Set<String>> owners, FoundFile file, NightFrame frame) {
    owners.computeIfAbsent(shortKey(file), key -> new HashSet<>()).add(frame.file());
  }

  private void learnCustoms(NightFrame frame) {
    for (FoundFile file : members(frame)) {
      Path folder = file.path().getParent();
      folders.find(longName(file)).ifPresent(path -> longNamed.add(folder));
      folders.find(shortName(file)).ifPresent(path -> shortNamed.add(folder));
    }
  }

  private List<FoundFile> members(NightFrame frame) {
    return Stream.concat(Stream.of(frame.file()), frame.copies().stream())
        .map(files::get)
        .filter(file -> file != null)
        .toList();
  }

  /** The file that a photo manager would look at: the RAW, else what was measured. */
  private static FoundFile own(List<FoundFile> members) {
    return members.stream()
        .filter(file -> file.formatByName() == ImageFormat.RAW)
        .findFirst()
        .orElse(members.get(0));
  }

  private List<Path> existing(NightFrame frame, FoundFile file) {
    List<Path> there = new ArrayList<>();
    if (owns(frame, file)) {
      folders.find(shortName(file)).ifPresent(there::add);
    }
    folders.find(longName(file)).ifPresent(there::add);
    return there;
  }

  private Path chosen(NightFrame frame, FoundFile file) {
    Path folder = file.path().getParent();
    boolean longCustom = longNamed.contains(folder) && !shortNamed.contains(folder);
    return owns(frame, file) && !longCustom ? shortName(file) : longName(file);
  }

  /** Whether the short name of a file is this frame's. */
  private boolean owns(NightFrame frame, FoundFile file) {
    String key = shortKey(file);
    Set<String> raws = rawsOfShortName.getOrDefault(key, Set.of());
    Set<String> exposures = exposuresOfShortName.getOrDefault(key, Set.of());
    return raws.size() == 1 ? raws.contains(frame.file()) : exposures.size() == 1;
  }

  private static SidecarPlace place(FoundFile file, Path sidecar, boolean isThere) {
    String relative = file.relativeName();
    String folder = relative.substring(0, relative.lastIndexOf('/') + 1);
    return new SidecarPlace(folder + PathNames.last(sidecar), sidecar, isThere);
  }

  private static Path shortName(FoundFile file) {
    return PathNames.withExtension(file.path(), EXTENSION);
  }

  private static Path longName(FoundFile file) {
    return PathNames.withSuffix(file.path(), EXTENSION);
  }

  /** The same for names that differ in case only, which some systems take for one. */
  private static String shortKey(FoundFile file) {
    Path sidecar = shortName(file);
    return sidecar.getParent().toUri() + PathNames.last(sidecar).toLowerCase(Locale.ROOT);
  }
}
