package rondure.night;

/**
 * Why a frame is not measured, or not explained.
 *
 * @param status what became of it
 * @param reason one sentence for the photographer
 */
record Ruling(FrameStatus status, String reason) {}
