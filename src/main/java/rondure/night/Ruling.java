package rondure.night;

/**
 * Why a frame is not measured.
 *
 * @param status what became of it
 * @param reason one sentence for the photographer
 */
record Ruling(FrameStatus status, String reason) {}
