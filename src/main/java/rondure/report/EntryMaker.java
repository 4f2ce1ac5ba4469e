package rondure.report;

import java.util.Locale;
import rondure.blur.Budget;
import rondure.night.NightFrame;
import rondure.night.Scene;
import rondure.report.layout.Wording;
import rondure.report.picture.Mark;

/** Makes the entry of one frame and registers its pictures. */
final class EntryMaker {
  private final ReportContext context;
  private final Wording words;
  private final CauseWords causes;
  private final EntryNumbers numbers;

  EntryMaker(ReportContext context) {
    this.context = context;
    this.words = context.words();
    this.causes = new CauseWords(words);
    this.numbers = new EntryNumbers(words);
  }

  private String terms(Budget budget) {
    return words.say("number.budget", "terms", BudgetWords.terms(budget.sky(), words));
  }

  /**
   * @param position the frame's place in the book
   */
  EntryView entry(NightFrame frame, Scene scene, int position) {
    EntryPictures pictures = new EntryPictures(context, frame, position);
    boolean teacher = context.settings().voice() == ReportSettings.Voice.TEACHER;
    return new EntryView(
        "frame-" + position,
        "note-" + String.format(Locale.ROOT, "%05d", position),
        words.say("entry.noteTitle", "file", frame.file()),
        context.mark(Mark.of(frame)),
        frame.file(),
        frame.grade().map(grade -> words.say("grade." + grade)).orElse(""),
        FactsLine.of(frame.facts(), words),
        causes.heading(frame),
        causes.sentences(frame, scene),
        new EntryBudget(context).picture(frame, scene, position),
        teacher ? frame.budget().map(this::terms).orElse("") : "",
        pictures.photographs(),
        pictures.regions(),
        pictures.map(scene),
        pictures.fan(),
        pictures.fanWords(),
        new EntryStars(context, frame).picture(position),
        numbers.of(frame, teacher),
        teacher ? causes.likelihoods(frame) : "");
  }
}
