package hairline.parser;

import hairline.parser.grammar.PartProgramLexer;
import hairline.parser.grammar.PartProgramParser;
import org.antlr.v4.runtime.Lexer;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.LexerATNSimulator;
import org.antlr.v4.runtime.atn.ParserATNSimulator;
import org.antlr.v4.runtime.atn.PredictionContextCache;
import org.antlr.v4.runtime.atn.PredictionMode;
import org.antlr.v4.runtime.dfa.DFA;

/** What ANTLR remembers of earlier decisions. Several threads may use the same tables. */
final class GrammarTables {
  private final DFA[] lexerTables = empty(PartProgramLexer._ATN);
  private final DFA[] parserTables = empty(PartProgramParser._ATN);
  private final PredictionContextCache lexerContexts = new PredictionContextCache();
  private final PredictionContextCache parserContexts = new PredictionContextCache();

  LexerATNSimulator lexerInterpreter(Lexer lexer) {
    return new LexerATNSimulator(lexer, PartProgramLexer._ATN, lexerTables, lexerContexts);
  }

  ParserATNSimulator parserInterpreter(Parser parser) {
    ParserATNSimulator interpreter =
        new ParserATNSimulator(parser, PartProgramParser._ATN, parserTables, parserContexts);
    interpreter.setPredictionMode(PredictionMode.SLL);
    return interpreter;
  }

  /** How many states the tables hold. */
  int states() {
    return states(lexerTables) + states(parserTables);
  }

  private static int states(DFA[] tables) {
    int states = 0;
    for (DFA table : tables) {
      states += table.states.size();
    }
    return states;
  }

  private static DFA[] empty(ATN atn) {
    DFA[] tables = new DFA[atn.getNumberOfDecisions()];
    for (int i = 0; i < tables.length; i++) {
      tables[i] = new DFA(atn.getDecisionState(i), i);
    }
    return tables;
  }
}
