package rondure.night;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames of one lens, a for one that was aimed anew and - for one that was not. */
class AimSplitterTest {
  @ParameterizedTest
  @CsvSource({
    "'------', '0'",
    "'---a---', '0 3'",
    "'---a--a--', '0 3 6'",
    // A single frame between two aims is a scene of its own.
    "'---aa--', '0 3 4'",
    // A row of frames that were each aimed anew stays together.
    "'---aaaa---', '0 3 6'",
    "'-aaaaa', '0'",
    "'---aaaaa', '0 3'",
    "'-a--', '0 1'",
    "'---a', '0 3'",
    "'-', '0'"
  })
  void aSceneStartsWhereTheCameraWasAimedAnew(String frames, String starts) {
    boolean[] anew = new boolean[frames.length()];
    for (int i = 0; i < anew.length; i++) {
      anew[i] = frames.charAt(i) == 'a';
    }
    List<Integer> expected =
        Arrays.stream(starts.split(" ")).map(Integer::valueOf).collect(Collectors.toList());
    assertEquals(expected, AimSplitter.starts(anew));
  }
}
