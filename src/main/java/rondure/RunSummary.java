package rondure;

import java.nio.file.Path;
import rondure.night.NightBook;

/**
 * How a run ended.
 *
 * @param book the night
 * @param outputFolder where the results are, absolute
 * @param unreadableCount frames that could not be read
 */
public record RunSummary(NightBook book, Path outputFolder, int unreadableCount) {}
