package rondure.blur;

/** Says what softened the frames of a scene. */
public interface Attribution {

  /** One answer for each frame, in order; a pure function. */
  SceneVerdicts judge(SceneEvidence scene);
}
