package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.motion.Event.StartAssumed;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import java.util.Optional;

/** A feed move before any feed word, or at feed zero. */
@AutoService(Rule.class)
public final class FeedMissing implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "feed-missing",
              Level.ERROR,
              Group.STATE,
              "a feed move before any feed, or at feed zero",
              Need.STATE)
          .withoutLimit("no feed is too small a feed, and zero is none")
          .hiding(
              Scope.BLOCK,
              "chip-below-minimum",
              "feed-below-edge-radius",
              "chip-above-limit",
              "runout-exceeds-feed");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Guessed guessed = new Guessed();
    on.event(
        StartAssumed.class,
        event -> {
          if (event.item().equals("motion")) {
            guessed.at = Optional.of(event.at());
          }
        });
    on.move(
        move -> {
          if (move.isFeed() && move.feedMmPerMin().orElse(0) <= 0) {
            judge(context, move, guessed.isAt(move));
          }
        });
  }

  /** Where a feed move is taken for one, for want of a motion code. */
  private static final class Guessed {
    private Optional<Place> at = Optional.empty();

    boolean isAt(Move move) {
      return at.filter(
              place -> place.file() == move.at().file() && place.line() == move.at().line())
          .isPresent();
    }
  }

  private static void judge(RuleContext context, Move move, boolean guessed) {
    Modal<Double> feed = move.modes().feed();
    if (feed.isUnknown()) {
      context.notChecked("the feed is unknown since " + context.line(feed, move.at()), move.at());
    } else if (feed.value().isPresent() && feed.value().get() > 0) {
      context.notChecked("the feed along the path is not known", move.at());
    } else {
      context.report(
          context
              .occurrence(
                  move.at(),
                  feed.value().isPresent()
                      ? "a feed move at feed 0"
                      : "a feed move, and no feed was given before it")
              .fact(
                  (feed.value().isPresent()
                          ? "F is 0 since " + context.line(feed, move.at())
                          : "no F stands in this block or before it")
                      + (guessed ? ", nor G0 to G3, so that G1 is assumed" : ""))
              .cure(
                  guessed
                      ? "G0 in this block where the move is to be rapid, else G1 and F"
                      : "F in this block or before it")
              .operation(move.modes().operation())
              .cause(feed.value().isPresent() ? "zero" : "none"));
    }
  }
}
