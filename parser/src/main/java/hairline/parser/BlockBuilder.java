package hairline.parser;

import hairline.parser.grammar.PartProgramParser.BlockContext;
import hairline.parser.grammar.PartProgramParser.BlockDeleteContext;
import hairline.parser.grammar.PartProgramParser.CommentContext;
import hairline.parser.grammar.PartProgramParser.ItemContext;
import hairline.parser.grammar.PartProgramParser.SequenceNumberContext;
import hairline.parser.grammar.PartProgramParser.SettingContext;
import hairline.parser.grammar.PartProgramParser.WordContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;

/** Turns the tree of one block into words, settings and comments. */
final class BlockBuilder {
  private final ValueBuilder values = new ValueBuilder();
  private final List<Word> words = new ArrayList<>();
  private final List<Setting> settings = new ArrayList<>();
  private final List<Comment> comments = new ArrayList<>();
  private final boolean tapeMark;
  private boolean deletable;

  BlockBuilder(BlockContext tree) {
    tapeMark = tree.PERCENT() != null;
    for (ParseTree child : tree.children) {
      if (child instanceof ItemContext item) {
        add(item);
      } else if (child instanceof SequenceNumberContext number) {
        words.add(new Word('N', values.value(number.value()), Spans.of(number)));
      } else if (child instanceof BlockDeleteContext delete) {
        deletable = true;
        TerminalNode number = delete.NUMBER();
        if (number != null) {
          values.checkSwitch(number.getSymbol());
        }
      }
    }
  }

  private void add(ItemContext item) {
    WordContext word = item.word();
    if (word != null) {
      words.add(new Word(letter(word), values.value(word.value()), Spans.of(word)));
      return;
    }
    CommentContext comment = item.comment();
    if (comment != null) {
      comments.add(Comments.of(comment.getStart()));
      return;
    }
    SettingContext setting = item.setting();
    settings.add(
        new Setting(values.value(setting.value()), values.sum(setting.sum()), Spans.of(setting)));
  }

  private static char letter(WordContext word) {
    return word.COLON() != null ? 'O' : Letters.of(word.address().getStart());
  }

  boolean isTapeMark() {
    return tapeMark;
  }

  boolean isDeletable() {
    return deletable;
  }

  List<Word> words() {
    return words;
  }

  List<Setting> settings() {
    return settings;
  }

  List<Comment> comments() {
    return comments;
  }

  /** A number or a value beyond the limits; the block is then not to be used. */
  Optional<Problem> limitProblem() {
    return values.limitProblem();
  }

  List<Problem> spaceProblems() {
    return values.spaceProblems();
  }
}
