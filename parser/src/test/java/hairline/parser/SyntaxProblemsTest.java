package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A block that breaks the grammar gives one problem, in words, at the right place. */
class SyntaxProblemsTest {
  private static void check(
      Problem.Kind kind, String text, String span, String found, String expected) {
    Problem problem = Read.problem(text);
    assertThat(problem.span().column() + "-" + problem.span().endColumn()).as(text).isEqualTo(span);
    assertThat(problem.found()).as(text).isEqualTo(found);
    assertThat(problem.expected()).as(text).isEqualTo(expected);
    assertThat(problem.kind()).as(text).isEqualTo(kind);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // a letter without its number
        "G1 X         | 4-5   | 'X' with no number behind it | a number",
        "G1 X Y2      | 4-5   | 'X' with no number behind it | a number",
        "g x10        | 1-2   | 'g' with no number behind it | a number",
        "GX10         | 1-2   | 'G' with no number behind it | a number",
        "G1XY2.5      | 3-4   | 'X' with no number behind it | a number",
        "N            | 1-2   | 'N' with no number behind it | a number",
        "N G1         | 1-2   | 'N' with no number behind it | a number",
        ":            | 1-2   | ':' with no number behind it | a number",
        "X(five)      | 1-2   | 'X' with no number behind it | a number",
        "X.           | 1-2   | 'X' with no number behind it | a number",
        "X]           | 1-2   | 'X' with no number behind it | a number",
        "XA5          | 1-2   | 'X' with no number behind it | a number",
        "X A          | 1-2   | 'X' with no number behind it | a number",
        "X R5         | 1-2   | 'X' with no number behind it | a number",
        "s i n[30]    | 1-2   | 's' with no number behind it | a number",
        "#3=6 X Y     | 6-7   | 'X' with no number behind it | a number",
        "#3=6 X       | 6-7   | 'X' with no number behind it | a number",
        "#3=6 AB5     | 6-7   | 'A' with no number behind it | a number",
        "#3=6 A N 5   | 6-7   | 'A' with no number behind it | a number",
        "#3=6 M O 5   | 6-7   | 'M' with no number behind it | a number",
        "#3=6 O R X   | 6-7   | 'O' with no number behind it | a number",
        "G1 O R 5     | 4-5   | 'O' with no number behind it | a number",
        "G1 Z         | 4-5   | 'Z' with no number behind it | a number",
        "X A T 5      | 1-2   | 'X' with no number behind it | a number",
        "X GT 5       | 1-2   | 'X' with no number behind it | a number",
        // a value that does not come, or breaks off
        "X--5         | 3-4   | '-'                          | a number",
        "X+-5         | 3-4   | '-'                          | a number",
        "X-           | 3-3   | the end of the block         | a number",
        "X#           | 3-3   | the end of the block         | a number",
        "X#Y          | 3-4   | 'Y'                          | a number",
        "#=6          | 2-3   | '='                          | a number",
        "#1=          | 4-4   | the end of the block         | a number",
        "#1==2        | 4-5   | '='                          | a number",
        "X[           | 3-3   | the end of the block         | a number",
        "X[1+         | 5-5   | the end of the block         | a number",
        "X[1**]       | 6-7   | ']'                          | a number",
        "X[]          | 3-4   | ']'                          | a number",
        "X[*2]        | 3-4   | '*'                          | a number",
        "X[1+2        | 6-6   | the end of the block         | an operator or ']'",
        "X[[1]        | 6-6   | the end of the block         | an operator or ']'",
        "X[1 G]       | 5-6   | 'G'                          | an operator or ']'",
        "X[1 a]       | 5-6   | 'a'                          | an operator or ']'",
        "X[1 A N 5]   | 5-6   | 'A'                          | an operator or ']'",
        "X[1 M O 5]   | 5-6   | 'M'                          | an operator or ']'",
        "X[1 X 5]     | 5-6   | 'X'                          | an operator or ']'",
        "X[1 SIN[30]] | 5-6   | 'S'                          | an operator or ']'",
        "X[1=2]       | 4-5   | '='                          | an operator or ']'",
        "X[SIN 30]    | 7-9   | '30'                         | '['",
        "X SIN 30     | 7-9   | '30'                         | '['",
        "X SIN        | 6-6   | the end of the block         | '['",
        "A ATAN[1]    | 10-10 | the end of the block         | '/'",
        "A ATAN[1]*2  | 10-11 | '*'                          | '/'",
        "A ATAN[1]/2  | 11-12 | '2'                          | '['",
        "#3           | 3-3   | the end of the block         | '='",
        "#3 G1        | 4-5   | 'G'                          | '='",
        // something else where a word was due
        "5            | 1-2   | '5'                          | an address letter or the end of the block",
        "[5]          | 1-2   | '['                          | an address letter or the end of the block",
        "=5           | 1-2   | '='                          | an address letter or the end of the block",
        "G1 X5]       | 6-7   | ']'                          | an address letter or the end of the block",
        "G1/X5        | 3-4   | '/'                          | an address letter or the end of the block",
        "/ /          | 3-4   | '/'                          | an address letter or the end of the block",
        "(a) /N5      | 5-6   | '/'                          | an address letter or the end of the block",
        "G1 <a>       | 4-5   | '<'                          | an address letter or the end of the block",
        "X<a>         | 1-2   | 'X' with no number behind it | a number",
        "G1 & X       | 4-5   | '&'                          | an address letter or the end of the block",
        "G1 😀😀      | 4-5   | '😀'                         | an address letter or the end of the block",
        "G1 €         | 4-5   | '€'                          | an address letter or the end of the block",
        "X5,          | 3-4   | ','                          | an address letter or the end of the block",
        "X5,5,        | 3-4   | ','                          | a decimal point",
        ",5           | 1-2   | ','                          | an address letter or the end of the block",
        "X5 ,B5       | 4-5   | ','                          | an address letter or the end of the block",
        "X,5          | 1-2   | 'X' with no number behind it | a number",
        "G1 X1,5      | 6-7   | ','                          | a decimal point",
        "X1.2.3       | 5-7   | '.3'                         | a number with one decimal point",
        "X5..         | 4-5   | '.'                          | a number with one decimal point",
        "X1.2..3      | 5-6   | '.'                          | a number with one decimal point",
        "N10 N20      | 5-6   | 'N'                          | one sequence number",
        "%O1000       | 2-3   | 'O'                          | the end of the block",
        "% (end)      | 3-8   | '(end)'                      | the end of the block",
        "%%           | 2-3   | '%'                          | the end of the block",
        "G1 %         | 4-5   | '%'                          | an address letter or the end of the block",
        "/12 G1       | 2-4   | '12'                         | a switch number from 1 to 9 behind '/'",
        "/0 G1        | 2-3   | '0'                          | a switch number from 1 to 9 behind '/'",
        "/1. G1       | 2-4   | '1.'                         | a switch number from 1 to 9 behind '/'",
        "N5 /10       | 5-7   | '10'                         | a switch number from 1 to 9 behind '/'",
        // comments
        "G1 X5 (abc   | 7-11  | a comment that nobody closed | ')'",
        "G1 X (abc    | 4-5   | 'X' with no number behind it | a number",
        "X[1 (abc     | 5-9   | a comment that nobody closed | ')'",
        "(a (b) c=2)  | 4-5   | '(' inside a comment         | ')' before the next '('",
        "(😀(b) IF)   | 3-4   | '(' inside a comment         | ')' before the next '('",
        "(a) (b (c)d) | 8-9   | '(' inside a comment         | ')' before the next '('",
        "(a (b) X     | 8-9   | 'X' with no number behind it | a number",
        "(a) X5)      | 7-8   | ')'                          | an address letter or the end of the block",
        "G1 ) (a (b)  | 4-5   | ')'                          | an address letter or the end of the block",
        "G1) X (a(b)  | 3-4   | ')'                          | an address letter or the end of the block",
        // functions without an address
        "SIN[30]      | 1-4   | 'SIN'                        | an address letter",
        "round [3]    | 1-6   | 'ROUND'                      | an address letter",
        "G1 SQRT[2]   | 4-8   | 'SQRT'                       | an address letter",
        "G1 LN 5      | 4-5   | 'L' with no number behind it | a number",
      })
  void slips(String text, String span, String found, String expected) {
    check(Problem.Kind.SYNTAX, text, span, found, expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "IF[#1 EQ 2]GOTO10      | 1-3   | IF       | a condition",
        "N100 IF [#1 GT 2] THEN | 6-8   | IF       | a condition",
        "THEN #1=2              | 1-5   | THEN     | a condition",
        "else                   | 1-5   | else     | a condition",
        "ELSEIF[#1]             | 1-7   | ELSEIF   | a condition",
        "ENDIF                  | 1-6   | ENDIF    | a condition",
        "CASE 1                 | 1-5   | CASE     | a condition",
        "While [#1 LT 10] DO1   | 1-6   | While    | a loop",
        "DO1                    | 1-3   | DO       | a loop",
        "END1                   | 1-4   | END      | a loop",
        "ENDWHILE               | 1-9   | ENDWHILE | a loop",
        "REPEAT                 | 1-7   | REPEAT   | a loop",
        "ENDREPEAT              | 1-10  | ENDREPEAT | a loop",
        "UNTIL #1               | 1-6   | UNTIL    | a loop",
        "FOR #1=1               | 1-4   | FOR      | a loop",
        "ENDFOR                 | 1-7   | ENDFOR   | a loop",
        "LOOP                   | 1-5   | LOOP     | a loop",
        "ENDLOOP                | 1-8   | ENDLOOP  | a loop",
        "BREAK                  | 1-6   | BREAK    | a loop",
        "CONTINUE               | 1-9   | CONTINUE | a loop",
        "N10GOTO#1              | 4-8   | GOTO     | a jump",
        "GOTOF N10              | 1-6   | GOTOF    | a jump",
        "GOTOB N10              | 1-6   | GOTOB    | a jump",
        "G1 X5 GOTO 10          | 7-11  | GOTO     | a jump",
        "POPEN                  | 1-6   | POPEN    | text output",
        "PCLOS                  | 1-6   | PCLOS    | text output",
        "DPRNT[X#1[42]]         | 1-6   | DPRNT    | text output",
        "BPRNT[X#1[42]]         | 1-6   | BPRNT    | text output",
        "T1 MSG(\"x\")          | 4-7   | MSG      | text output",
        "PRINT #1               | 1-6   | PRINT    | text output",
        "O100 SUB               | 6-9   | SUB      | a subprogram statement",
        "O100 ENDSUB            | 6-12  | ENDSUB   | a subprogram statement",
        "CALL 100               | 1-5   | CALL     | a subprogram statement",
        "RETURN                 | 1-7   | RETURN   | a subprogram statement",
        "PROC A                 | 1-5   | PROC     | a subprogram statement",
        "#1=[#2 EQ 3]           | 8-10  | EQ       | a comparison",
        "X[1ne2]                | 4-6   | ne       | a comparison",
        "X[#1 GT 2]             | 6-8   | GT       | a comparison",
        "X[#1 GE 2]             | 6-8   | GE       | a comparison",
        "X[#1 LT 2]             | 6-8   | LT       | a comparison",
        "X[#1 LE 2]             | 6-8   | LE       | a comparison",
        "X[1 EQ= 2]             | 5-7   | EQ       | a comparison",
        "#<depth> = 5           | 1-9   | #<depth> | a name",
        "O<pocket> CALL         | 1-10  | O<pocket> | a name",
        "<mixer> (roughing)     | 1-8   | <mixer>  | a name",
        "X#<a                   | 2-5   | #<a      | a name",
        "G1 X5,R2.              | 6-8   | ,R       | corner rounding or chamfer",
        "G1 X5 , C1.            | 7-10  | ,C       | corner rounding or chamfer",
        "G1 X5,a45.             | 6-8   | ,a       | a line given by its angle",
        "X=5                    | 1-3   | X=       | an assignment",
        "R1=R2+3                | 1-4   | R1=      | an assignment",
        "G1 CR = 5              | 4-8   | CR=      | an assignment",
        "SP1=5                  | 1-5   | SP1=     | an assignment",
        "G1 DEPTH=5             | 4-10  | DEPTH=   | an assignment",
        "X[POW[2,3]]            | 3-6   | POW      | a function",
        "X[1+BCD[2]]            | 5-8   | BCD      | a function",
        "X SIM[30]              | 3-6   | SIM      | a function",
        "X-SIM[30]              | 3-6   | SIM      | a function",
        "#1=SIM[30]             | 4-7   | SIM      | a function",
        "X#SIM[30]              | 3-6   | SIM      | a function",
        "X+FUB[1]               | 3-6   | FUB      | a function",
        ":FUB[1]                | 2-5   | FUB      | a function",
        "X[1] FUB[1]            | 6-9   | FUB      | a macro statement",
        "XSIM[30]               | 1-5   | XSIM     | a macro statement",
        "CYCLE(1,2)             | 1-6   | CYCLE    | a macro statement",
        "hello world            | 1-6   | hello    | a macro statement",
        "GXY                    | 1-4   | GXY      | a macro statement",
        "QR[5]                  | 1-3   | QR       | a macro statement",
        "QR(5)                  | 1-3   | QR       | a macro statement",
        "QR (5                  | 1-3   | QR       | a macro statement",
        "X[1 OV 2]              | 5-7   | OV       | a macro statement",
        "X[1 AN 5]              | 5-7   | AN       | a macro statement",
        "X[1] EQ(2)             | 6-8   | EQ       | a macro statement",
        "AND[5]                 | 1-4   | AND      | a macro statement",
        "#3=6 MOX               | 6-9   | MOX      | a macro statement",
      })
  void macroStatements(String text, String span, String found, String expected) {
    check(Problem.Kind.MACRO, text, span, found, expected);
  }

  @Test
  void longMacroNamesAreShortened() {
    assertThat(Read.problem("A".repeat(24)).found()).isEqualTo("A".repeat(24));
    assertThat(Read.problem("A".repeat(25)).found()).isEqualTo("A".repeat(23) + "…");
    assertThat(Read.problem("#<" + "😀".repeat(22)).found()).isEqualTo("#<" + "😀".repeat(22));
    assertThat(Read.problem("#<" + "😀".repeat(23)).found())
        .isEqualTo("#<" + "😀".repeat(21) + "…");
  }

  @Test
  void quotesAreSane() {
    assertThat(Read.problem("#<a\0b\u202E>").found()).isEqualTo("#<a\uFFFDb\uFFFD>");
    assertThat(Read.problem("X[(a\u001B b\tc)").found()).isEqualTo("'(a\uFFFD b c)'");
  }

  /** What could spoil a terminal or a report is named by its number. */
  @ParameterizedTest
  @CsvSource({
    "0000, a control character",
    "001B, the escape character",
    "007F, DEL",
    "0085, a control character of ISO 8859-1",
    "00A0, a blank that no control takes for one",
    "202E, right-to-left override",
    "FEFF, a byte order mark",
    "2028, line separator",
    "2029, paragraph separator",
    "E000, private use",
    "0378, unassigned",
  })
  void unprintableCharacters(String code, String what) {
    String character = Character.toString(Integer.parseInt(code, 16));
    assertThat(Read.problem("G1 " + character))
        .as(what)
        .isEqualTo(
            new Problem(
                Problem.Kind.SYNTAX,
                new Span(4, 5),
                "the character U+" + code,
                "an address letter or the end of the block"));
  }
}
