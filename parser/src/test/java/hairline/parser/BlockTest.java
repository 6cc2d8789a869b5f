package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a line is made of: NISTIR 6556 §3.3, and the forms of the trade that the grammar names. */
class BlockTest {
  private static Span span(int column, int endColumn) {
    return new Span(column, endColumn);
  }

  /** NISTIR 6556 §3.3: "g0x +0. 12 34y 7" is equivalent to "g0 x+0.1234 y7". */
  @Test
  void blanksMeanNothing() {
    assertThat(Read.words("g0x +0. 12 34y 7"))
        .isEqualTo(Read.words("g0 x+0.1234 y7"))
        .containsExactly("G0", "X0.1234", "Y7");
  }

  @Test
  void tabsAreBlanks() {
    assertThat(Read.words("\tG1\tX\t1 \t Y2\t")).containsExactly("G1", "X1", "Y2");
  }

  @Test
  void everyLetterIsAnAddressInBothCases() {
    for (char letter = 'A'; letter <= 'Z'; letter++) {
      char small = (char) (letter + ('a' - 'A'));
      assertThat(Read.words(letter + "1. x0 " + small + "2."))
          .containsExactly(letter + "1", "X0", letter + "2");
    }
  }

  @Test
  void wordsKeepTheirOrderAndPlace() {
    Block block = Read.good("N120 G1X-1.204 F180.");
    assertThat(block.words().stream().map(Show::word))
        .containsExactly("N120", "G1", "X-1.204", "F180");
    assertThat(block.words().stream().map(Word::span))
        .containsExactly(span(1, 5), span(6, 8), span(8, 15), span(16, 21));
  }

  @Test
  void aSequenceNumberMayComeLater() {
    assertThat(Read.words("G1 N5 X2")).containsExactly("G1", "N5", "X2");
  }

  @ParameterizedTest
  @ValueSource(strings = {"O1234", "o1234", ":1234", ": 1234"})
  void aProgramNumberHasTheLetterO(String text) {
    Block block = Read.good(text);
    assertThat(block.words().stream().map(Show::word)).containsExactly("O1234");
    assertThat(block.words().get(0).span()).isEqualTo(span(1, text.length() + 1));
    assertThat(block.kind()).isEqualTo(Block.Kind.BLOCK);
  }

  @ParameterizedTest
  @CsvSource({
    "/G1, G1",
    "/ N5 G1, N5 G1",
    "' /N5 G1', N5 G1",
    "/1 G1, G1",
    "/9G1, G1",
    "N5/G1, N5 G1",
    "N5 /2 G1, N5 G1",
    "/, ''",
  })
  void blockDelete(String text, String words) {
    assertThat(Read.good(text).deletable()).isTrue();
    assertThat(String.join(" ", Read.words(text))).isEqualTo(words);
  }

  @ParameterizedTest
  @ValueSource(strings = {"G1", "//G1", "(/) G1", "X[4/2]", "", ";/"})
  void noBlockDelete(String text) {
    assertThat(Read.good(" " + text).deletable()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"/G1 X", " / G1 X", "/IF[#1 EQ 1]", "/[", "/"})
  void aBrokenBlockIsDeletableToo(String text) {
    assertThat(Read.block(text).deletable()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"G1 X", "G1 /X", "//(", "(/", "\0/"})
  void aBrokenBlockWithoutDelete(String text) {
    assertThat(Read.block(text).deletable()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"%", " %", "%\t ", "\t%\t"})
  void aBarePercentIsATapeMark(String text) {
    Block block = Read.good(text);
    assertThat(block.kind()).isEqualTo(Block.Kind.TAPE_MARK);
    assertThat(block.words()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\t", "()", "G1"})
  void anythingElseIsNone(String text) {
    assertThat(Read.good(text + " ").kind()).isEqualTo(Block.Kind.BLOCK);
  }

  /** NISTIR 6556 §3.3.6: the five items mean the same in any of their 120 orders. */
  @Test
  void itemsMayComeInAnyOrder() {
    List<String> items = List.of("g40", "g1", "#3=15", "(foo)", "#4=-7.0");
    Set<String> lines = new HashSet<>();
    permute(new ArrayList<>(items), 0, lines);
    assertThat(lines).hasSize(120);
    for (String line : lines) {
      Block block = Read.good(line);
      assertThat(block.words().stream().map(Show::word)).containsExactlyInAnyOrder("G40", "G1");
      assertThat(block.settings().stream().map(Show::setting))
          .containsExactlyInAnyOrder("#3=15", "#4=-7.0");
      assertThat(block.comments().stream().map(Comment::text)).containsExactly("foo");
    }
  }

  private static void permute(List<String> items, int from, Set<String> lines) {
    if (from == items.size()) {
      lines.add(String.join(" ", items));
    }
    for (int i = from; i < items.size(); i++) {
      Collections.swap(items, from, i);
      permute(items, from + 1, lines);
      Collections.swap(items, from, i);
    }
  }

  /** NISTIR 6556 §3.3.3 and §3.3.5. */
  @Test
  void settings() {
    Block block = Read.good("#3 = 15 #3=6 G1 x#3");
    assertThat(block.settings().stream().map(Show::setting)).containsExactly("#3=15", "#3=6");
    assertThat(block.settings().stream().map(Setting::span))
        .containsExactly(span(1, 8), span(9, 13));
    assertThat(block.words().stream().map(Show::word)).containsExactly("G1", "X#3");
  }

  @ParameterizedTest
  @CsvSource({
    "#1=#1+1, #1=[#1 + 1]",
    "#1=2*3-4, #1=[[2 * 3] - 4]",
    "##1 = 0.375, ##1=0.375",
    "#[#1+2]=-#4, #[#1 + 2]=-#4",
    "#1=2 OR ROUND[3], #1=[2 or round[3]]",
    "#1=2 XOR 3, #1=[2 xor 3]",
    "#1=7 MOD 4, #1=[7 mod 4]",
    "#1=7 AND #2, #1=[7 and #2]",
  })
  void settingsOfExpressions(String text, String expected) {
    Block block = Read.good(text);
    assertThat(block.settings().stream().map(Show::setting)).containsExactly(expected);
    assertThat(block.words()).isEmpty();
  }

  /** Behind a setting without brackets, these letters could begin an operator. */
  @ParameterizedTest
  @CsvSource({
    "#3=6 X10, X10",
    "#3=6 A5, A5",
    "#3=6 M3, M3",
    "#3=6 O7, O7",
    "#3=6 OROUND[5], Oround[5]",
    "#3=6 XFIX[5], Xfix[5]",
    "#3=6 N7, N7",
    "#3=6 R2, R2",
  })
  void wordsBehindSettings(String text, String word) {
    Block block = Read.good(text);
    assertThat(block.settings().stream().map(Show::setting)).containsExactly("#3=6");
    assertThat(block.words().stream().map(Show::word)).containsExactly(word);
  }

  @Test
  void comments() {
    Block block = Read.good("(Größe ; a) G80 (( b)M5 ;(c) %");
    assertThat(block.comments())
        .containsExactly(
            new Comment("Größe ; a", true, span(1, 12)),
            new Comment("( b", true, span(17, 22)),
            new Comment("(c) %", true, span(25, 31)));
    assertThat(block.words().stream().map(Show::word)).containsExactly("G80", "M5");
  }

  @Test
  void remarks() {
    assertThat(Read.good("G1 //go (there").comments())
        .containsExactly(new Comment("go (there", true, span(4, 15)));
    assertThat(Read.good(";").comments()).containsExactly(new Comment("", true, span(1, 2)));
    assertThat(Read.good("//").comments()).containsExactly(new Comment("", true, span(1, 3)));
    assertThat(Read.good(";//x").comments()).containsExactly(new Comment("//x", true, span(1, 5)));
  }

  @Test
  void aCommentKeepsItsText() {
    assertThat(Read.good("(a\tB  c )").comments())
        .containsExactly(new Comment("a\tB  c ", true, span(1, 10)));
  }

  @Test
  void aCommentThatNobodyClosed() {
    Block block = Read.block("G1 (abc ; d");
    assertThat(block.comments()).containsExactly(new Comment("abc ; d", false, span(4, 12)));
    assertThat(block.words()).isEmpty();
    assertThat(block.problems())
        .containsExactly(
            new Problem(Problem.Kind.SYNTAX, span(4, 12), "a comment that nobody closed", "')'"));
  }

  @Test
  void aBrokenBlockKeepsItsComments() {
    Block block = Read.block("(a) G1 X ;b");
    assertThat(block.comments().stream().map(Comment::text)).containsExactly("a", "b");
    assertThat(block.words()).isEmpty();
  }

  /** A code point beyond the basic plane is one column. */
  @Test
  void columnsCountCodePoints() {
    Block block = Read.block("(😀é) G1 X(");
    assertThat(block.problems().get(0).span()).isEqualTo(span(9, 10));
    assertThat(block.comments().get(0)).isEqualTo(new Comment("😀é", true, span(1, 5)));
    assertThat(Read.good("(😀)G1").words().get(0).span()).isEqualTo(span(4, 6));
  }

  @Test
  void theTextIsCutOff() {
    String longest = "(" + "😀".repeat(Limits.TEXT_CODE_POINTS - 2) + ")";
    assertThat(Read.good(longest).text()).isEqualTo(longest);
    assertThat(Read.good(longest + "G1").text()).isEqualTo(longest);
    assertThat(Read.good(longest + "G1").words()).hasSize(1);
    assertThat(Read.good(" " + longest).text())
        .isEqualTo(" " + longest.substring(0, longest.length() - 1));
  }

  @Test
  void theTextIsTheLine() {
    assertThat(Read.block(" G1\tX\0 ").text()).isEqualTo(" G1\tX\0 ");
  }
}
