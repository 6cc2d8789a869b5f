package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import hairline.parser.grammar.PartProgramParser;
import hairline.parser.grammar.PartProgramParser.BlockContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.Token;

/**
 * Reads one line with the grammar. Holds lexer, parser and their tables for reuse, so one instance
 * serves one thread.
 */
final class GrammarReader {
  /** Tables are looked at now and then only; in between they grow by little. */
  static final int BLOCKS_BETWEEN_TABLE_CHECKS = 1_024;

  private final LineChars chars = new LineChars();
  private final PartProgramLexer lexer = new PartProgramLexer(chars);
  private final CommonTokenStream tokens = new CommonTokenStream(lexer);
  private final PartProgramParser parser = new PartProgramParser(tokens);
  private final StopAtFirstError stopAtFirstError = new StopAtFirstError();
  private final SharedTables shared;
  private int blocksUntilCheck;

  GrammarReader(SharedTables shared) {
    this.shared = shared;
    lexer.removeErrorListeners();
    parser.removeErrorListeners();
  }

  /** The block that a line makes, its kind apart: never a leader. */
  Block read(Line line) {
    line.decode();
    if (line.tooLong) {
      return unread(line, List.of(), SyntaxProblems.lineTooLong());
    }
    if (blocksUntilCheck == 0) {
      useCurrentTables();
    }
    blocksUntilCheck--;
    chars.reset(line);
    lexer.setInputStream(chars);
    tokens.setTokenSource(lexer);
    tokens.fill();
    List<Token> all = tokens.getTokens();
    Optional<Problem> tooDeep = Nesting.problem(all);
    if (tooDeep.isPresent()) {
      return unread(line, comments(all), tooDeep.get());
    }
    return stopAtFirstError
        .parse(parser, tokens)
        .map(tree -> block(line, tree))
        .orElseGet(() -> unread(line, comments(all), broken(all)));
  }

  private static Block block(Line line, BlockContext tree) {
    BlockBuilder builder = new BlockBuilder(tree);
    Optional<Problem> limit = builder.limitProblem();
    if (limit.isPresent()) {
      return unread(line, builder.comments(), limit.get());
    }
    return new Block(
        line.number,
        line.byteOffset,
        line.byteLength,
        line.shortText(),
        builder.isTapeMark() ? Block.Kind.TAPE_MARK : Block.Kind.BLOCK,
        builder.isDeletable(),
        builder.words(),
        builder.settings(),
        builder.comments(),
        builder.spaceProblems());
  }

  private Problem broken(List<Token> all) {
    return new SyntaxProblems(all)
        .problem(stopAtFirstError.offender(), stopAtFirstError.expected());
  }

  private static Block unread(Line line, List<Comment> comments, Problem problem) {
    return new Block(
        line.number,
        line.byteOffset,
        line.byteLength,
        line.shortText(),
        Block.Kind.BLOCK,
        startsWithSlash(line),
        List.of(),
        List.of(),
        comments,
        List.of(problem));
  }

  /** A block that cannot be read is deletable all the same. */
  private static boolean startsWithSlash(Line line) {
    for (int i = 0; i < line.count; i++) {
      int c = line.codePoints[i];
      if (c != ' ' && c != '\t') {
        return c == '/' && !(i + 1 < line.count && line.codePoints[i + 1] == '/');
      }
    }
    return false;
  }

  private static List<Comment> comments(List<Token> all) {
    List<Comment> comments = new ArrayList<>();
    for (Token token : all) {
      switch (token.getType()) {
        case PartProgramLexer.COMMENT, PartProgramLexer.REMARK, PartProgramLexer.UNCLOSED_COMMENT ->
            comments.add(Comments.of(token));
        default -> {}
      }
    }
    return comments;
  }

  private void useCurrentTables() {
    blocksUntilCheck = BLOCKS_BETWEEN_TABLE_CHECKS;
    GrammarTables tables = shared.current();
    lexer.setInterpreter(tables.lexerInterpreter(lexer));
    parser.setInterpreter(tables.parserInterpreter(parser));
  }
}
