package rondure.intake;

/**
 * A file and what it says.
 *
 * @param file the file
 * @param facts its facts
 */
public record Shot(FoundFile file, ShotFacts facts) {}
