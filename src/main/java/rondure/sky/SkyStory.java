package rondure.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rondure.base.Orientation;

/** From linked frames to what the scene's sky did: one story for each block, one pole for all. */
final class SkyStory {
  private final List<SkyShot> shots;
  private final SceneClock clock;
  private final Camera camera;
  private final Sight.Trust trust;
  private final List<FrameStars> frames;
  private final List<FrameLink> links;
  private final FrameSky[] told;
  private final TrackNumbers tracks;

  /** A block with its map and its motion. */
  private record Block(SkyMap map, BlockSky sky) {}

  /** Frames linked by their stars, as seen through a camera. */
  record Matched(Camera camera, List<FrameStars> frames, List<FrameLink> links) {
    Matched {
      frames = List.copyOf(frames);
      links = List.copyOf(links);
    }
  }

  SkyStory(List<SkyShot> shots, SceneClock clock, Matched matched, Sight.Trust trust) {
    this.shots = shots;
    this.clock = clock;
    this.camera = matched.camera();
    this.frames = matched.frames();
    this.links = matched.links();
    this.trust = trust;
    this.told = new FrameSky[shots.size()];
    this.tracks = new TrackNumbers(shots, frames);
    Arrays.fill(told, FrameSky.UNKNOWN);
  }

  SceneSky told() {
    List<Block> blocks = blocks();
    Block main =
        Collections.max(
            blocks,
            Comparator.comparingInt((Block b) -> b.sky().kind() == SkyVote.Kind.UNKNOWN ? 0 : 1)
                .thenComparingDouble(b -> b.sky().poses().size()));
    for (Block block : blocks) {
      tell(block, block == main ? Rotation.NONE : aligned(block, main));
      tracks.add(block.map());
    }
    jumpBetween(blocks);
    Vec spin = main.sky().sky();
    boolean turns = trust.scaleKnown() && main.sky().kind() == SkyVote.Kind.TURNS;
    Optional<Direction> pole =
        turns ? Optional.of(Direction.of(-spin.x(), -spin.y(), -spin.z())) : Optional.empty();
    double error =
        Math.toDegrees(main.sky().vote().poleErrorRadPerS() / SkyMotion.SIDEREAL_RATE_RAD_PER_S);
    return new SceneSky(
        finding(main.sky()),
        Optional.of(camera),
        trust.found(),
        pole,
        turns ? Math.min(180, error) : 180,
        Arrays.asList(told),
        tracks.tracks());
  }

  private SceneSky.Finding finding(BlockSky sky) {
    if (!trust.scaleKnown()) {
      return SceneSky.Finding.SCALE_UNKNOWN;
    }
    return switch (sky.kind()) {
      case TURNS -> sky.byClock() ? SceneSky.Finding.SKY_TURNS : SceneSky.Finding.CLOCK_UNKNOWN;
      case TRACKS -> sky.byClock() ? SceneSky.Finding.TRACKING : SceneSky.Finding.CLOCK_UNKNOWN;
      case UNKNOWN -> SceneSky.Finding.CLOCK_UNKNOWN;
    };
  }

  private List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    int count = links.stream().mapToInt(FrameLink::block).max().orElse(-1) + 1;
    for (int number = 0; number < count; number++) {
      int wanted = number;
      List<FrameLink> mine = links.stream().filter(l -> l.block() == wanted).toList();
      if (mine.size() >= 2) {
        SkyMap map = new SkyMap(camera, frames);
        map.build(mine);
        List<Pose> poses = poses(map);
        if (poses.size() >= 2) {
          SkyTimes times = SkyTimes.of(poses, clock.stepSeconds());
          Sight sight = Sight.of(times, clock.stepSeconds(), camera, trust, held(poses));
          blocks.add(new Block(map, BlockSky.of(times, sight)));
        }
      }
    }
    return blocks;
  }

  private Orientation held(List<Pose> poses) {
    return shots.get(poses.get(poses.size() / 2).frame()).orientation();
  }

  private List<Pose> poses(SkyMap map) {
    List<Pose> poses = new ArrayList<>();
    for (int i = 0; i < frames.size(); i++) {
      Optional<Attitude> attitude = map.attitude(i);
      if (attitude.isPresent()) {
        double seconds = clock.secondsOf(i).orElse(Double.NaN);
        poses.add(new Pose(i, seconds, attitude.get().turn(), attitude.get().errors()));
      }
    }
    return poses;
  }

  /**
   * From the scene's axes to a block's that shares no star with the main one: the pole must agree,
   * the turn about it stays open.
   */
  private static Rotation aligned(Block block, Block main) {
    if (block.sky().kind() != SkyVote.Kind.TURNS || main.sky().kind() != SkyVote.Kind.TURNS) {
      return Rotation.NONE;
    }
    Vec from = main.sky().sky();
    Vec to = block.sky().sky();
    Vec axis = from.cross(to);
    return axis.withLength(Math.atan2(axis.length(), from.dot(to))).exp();
  }

  private void tell(Block block, Rotation toBlock) {
    BlockSky sky = block.sky();
    for (int k = 0; k < sky.poses().size(); k++) {
      Pose pose = sky.poses().get(k);
      BlockMotions.Motion motion = sky.motions().get(k);
      Optional<Spin> skySpin = sky.skySpin(pose);
      told[pose.frame()] =
          new FrameSky(
              Optional.of(toBlock.then(pose.turn())),
              skySpin,
              skySpin.isEmpty() ? Spin.NONE : motion.creep().spin(),
              motion.errorRadPerS(),
              motion.jumpRad());
    }
  }

  /** A block shares no star with the frames of another before it: half the view away at least. */
  private void jumpBetween(List<Block> blocks) {
    int[] blockOf = new int[told.length];
    for (int b = 0; b < blocks.size(); b++) {
      int number = b + 1;
      blocks.get(b).sky().poses().forEach(pose -> blockOf[pose.frame()] = number);
    }
    int before = 0;
    for (int frame = 0; frame < told.length; frame++) {
      if (blockOf[frame] > 0 && before > 0 && blockOf[frame] != before) {
        double angle = Math.atan(frames.get(frame).diagonalPx() / 2 / camera.focalLengthPx());
        told[frame] = jumped(told[frame], angle);
      }
      before = blockOf[frame] > 0 ? blockOf[frame] : before;
    }
  }

  private static FrameSky jumped(FrameSky sky, double jumpRad) {
    return new FrameSky(
        sky.attitude(), sky.skySpin(), sky.creep(), sky.spinErrorRadPerS(), jumpRad);
  }
}
