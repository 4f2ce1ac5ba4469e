package rondure.report.sidecar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;

/** What stays and what changes in a sidecar, read back without the library that wrote it. */
class XmpMergeTest {
  private static final String FAR = "https://far.example/away#";
  private static final FrameMarks KEEP =
      new FrameMarks(4, List.of("Rondure keep", "Rondure nothing softened"));
  private static final FrameMarks ASIDE =
      new FrameMarks(1, List.of("Rondure set aside", "Rondure tripod"));

  private static Merged merged(String existing, FrameMarks marks, boolean replace)
      throws SidecarProblem {
    return XmpMerge.merge(Optional.of(existing), Optional.of(marks), replace);
  }

  private static Merged fresh(FrameMarks marks) throws SidecarProblem {
    return XmpMerge.merge(Optional.empty(), Optional.of(marks), false);
  }

  @Test
  void aNewSidecarSaysRatingAndKeywordsAsTheSpecificationHasThem() throws Exception {
    Merged merged = fresh(KEEP);
    RdfReading read = RdfReading.of(merged.text());
    assertEquals(Optional.of(4.0), read.rating());
    assertEquals(KEEP.keywords(), read.keywords());
    assertEquals(
        List.of("rating 4", "new keywords Rondure keep, Rondure nothing softened"),
        merged.changes());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "0.0", ""})
  void anUnratedPictureGetsOurRating(String unrated) throws Exception {
    assertEquals(
        Optional.of(4.0),
        RdfReading.of(merged(Packets.rated(unrated), KEEP, false).text()).rating());
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "3", "4", "5", "4.5", "-1"})
  void aRatingOfSomebodyStaysUnlessToldOtherwise(String rating) throws Exception {
    Merged kept = merged(Packets.rated(rating), KEEP, false);
    assertEquals(Optional.of(Double.parseDouble(rating)), RdfReading.of(kept.text()).rating());
    assertEquals(List.of("rating " + rating + " stays"), kept.remarks());
    assertEquals(KEEP.keywords(), RdfReading.of(kept.text()).keywords());
    Merged replaced = merged(Packets.rated(rating), KEEP, true);
    assertEquals(Optional.of(4.0), RdfReading.of(replaced.text()).rating());
    assertEquals(List.of(), replaced.remarks());
  }

  @Test
  void aRatingThatIsNoNumberIsSomebodysToo() throws Exception {
    Merged merged = merged(Packets.rated("four"), KEEP, false);
    assertEquals(Optional.of("four"), RdfReading.of(merged.text()).text(RdfReading.XMP, "Rating"));
  }

  @Test
  void ourOwnRatingOfAnEarlierRunGivesWay() throws Exception {
    Merged later = merged(fresh(KEEP).text(), ASIDE, false);
    RdfReading read = RdfReading.of(later.text());
    assertEquals(Optional.of(1.0), read.rating());
    assertEquals(ASIDE.keywords(), read.keywords());
    assertEquals("rating 4 becomes 1", later.changes().get(0));
  }

  @Test
  void ourRatingThatAPersonChangedIsTheirsFromThenOn() throws Exception {
    String changed = fresh(KEEP).text().replace("xmp:Rating=\"4\"", "xmp:Rating=\"3\"");
    Merged merged = merged(changed, ASIDE, false);
    assertEquals(Optional.of(3.0), RdfReading.of(merged.text()).rating());
    String back = merged.text().replace("xmp:Rating=\"3\"", "xmp:Rating=\"4\"");
    Merged again = merged(back, ASIDE, false);
    assertEquals(Optional.of(4.0), RdfReading.of(again.text()).rating());
    assertFalse(again.isChange());
  }

  @Test
  void aFrameThatLostItsGradeLosesOurMarksAndNothingElse() throws Exception {
    String ours = merged(Packets.of("far:plain='x'", ""), KEEP, false).text();
    Merged bare = XmpMerge.merge(Optional.of(ours), Optional.empty(), false);
    RdfReading read = RdfReading.of(bare.text());
    assertEquals(Optional.empty(), read.rating());
    assertEquals(List.of(), read.keywords());
    assertEquals(Optional.of("x"), read.text(FAR, "plain"));
    assertFalse(bare.text().contains(XmpMerge.OURS));
  }

  @Test
  void everythingElseInASidecarStays() throws Exception {
    Merged merged = merged(Packets.rich(), KEEP, false);
    RdfReading read = RdfReading.of(merged.text());
    assertEquals(Optional.of(3.0), read.rating());
    assertEquals(
        List.of("hut", "Milchstra\u00DFe", "Rondure island", "Rondure keep").toString(),
        read.keywords().subList(0, 4).toString());
    assertEquals(Optional.of("a & b"), read.text(FAR, "plain"));
    assertEquals(Optional.of(""), read.text(FAR, "empty"));
    assertEquals(Optional.of("two\nlines"), read.text(FAR, "note"));
    Element page = read.elements(FAR, "page").get(0);
    assertEquals("https://far.example/page", page.getAttributeNS(RdfReading.RDF, "resource"));
    assertTrue(merged.text().contains("xml:lang=\"de\""), merged.text());
    String steps = read.elements(FAR, "steps").get(0).getTextContent();
    assertEquals("0, 0255, 255", steps.replaceAll("\\s{2,}", ""));
    assertEquals("Ridge", read.elements(RdfReading.DC, "title").get(0).getTextContent().strip());
    assertTrue(merged.text().contains("depth=\"2\""), merged.text());
    assertTrue(merged.text().contains("name=\"curve\""), merged.text());
  }

  @Test
  void mergingAgainChangesNothing() throws Exception {
    for (String start : List.of(Packets.rich(), Packets.rated("0"), fresh(ASIDE).text())) {
      Merged once = merged(start, KEEP, false);
      Merged twice = merged(once.text(), KEEP, false);
      assertTrue(once.isChange());
      assertEquals(List.of(), twice.changes());
      assertEquals(once.text(), twice.text());
    }
  }

  @Test
  void whatOtherSidecarsCallANamespaceHasNoSay() throws Exception {
    String alone = merged(Packets.rich(), KEEP, false).text();
    merged(Packets.rich().replace("far.example/away", "else.example/where"), KEEP, false);
    assertEquals(alone, merged(Packets.rich(), KEEP, false).text());
  }

  @ParameterizedTest
  @CsvSource({"Seq,hut", "Bag,hut", "Alt,hut"})
  void keywordsInAnyArrayEndInABag(String array, String word) throws Exception {
    String list = "<rdf:" + array + "><rdf:li>" + word + "</rdf:li></rdf:" + array + ">";
    String start = Packets.of("", "<dc:subject>" + list + "</dc:subject>");
    List<String> keywords = RdfReading.of(merged(start, KEEP, false).text()).keywords();
    assertEquals(List.of("hut", "Rondure keep", "Rondure nothing softened"), keywords);
  }

  @Test
  void aSingleKeywordOfAnOldFileEndsInABag() throws Exception {
    String start = Packets.of("dc:subject='hut'", "");
    List<String> keywords = RdfReading.of(merged(start, KEEP, false).text()).keywords();
    assertEquals(List.of("hut", "Rondure keep", "Rondure nothing softened"), keywords);
  }

  /** A photo manager may sort keywords; that is no reason to write the file again. */
  @Test
  void theOrderOfOurKeywordsDoesNotMatter() throws Exception {
    FrameMarks turned = new FrameMarks(4, List.of("Rondure nothing softened", "Rondure keep"));
    assertFalse(merged(fresh(turned).text(), KEEP, false).isChange());
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 6, -1})
  void marksRefuseOtherRatings(int rating) {
    org.junit.jupiter.api.Assertions.assertThrows(
        IllegalArgumentException.class, () -> new FrameMarks(rating, List.of("Rondure keep")));
  }
}
