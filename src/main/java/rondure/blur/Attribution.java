package rondure.blur;

import java.util.List;

/** Says what softened the frames of a scene. */
public interface Attribution {

  /** One answer for each frame, in order; a pure function. */
  List<Judged> judge(SceneEvidence scene);
}
