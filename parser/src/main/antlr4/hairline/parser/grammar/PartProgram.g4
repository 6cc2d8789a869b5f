/*
 * The language of part programs, as Hairline reads it.
 *
 * ISO 6983 gives the shape: a program is a list of blocks, a block is a line, and a line is made of
 * words, each an address letter with a number. The details follow NISTIR 6556 (Kramer, Proctor,
 * Messina, 2000), section 3.3 and its appendix E; what goes beyond that report is marked "trade".
 *
 * The start rule, block, describes ONE line without its line end, so that a broken line never
 * spoils the next one. Reading a program means reading its lines one by one.
 *
 * Some things are not said here, because they are no matter of grammar:
 *   - a line is at most 65,536 bytes, a number at most 40 digits, brackets and '#' nest at most
 *     100 deep, and a value holds at most 500 operations (class Limits);
 *   - the switch number behind a block delete is a digit from 1 to 9;
 *   - lines before the first tape mark of a file can be a leader, which is not read (class
 *     PartPrograms).
 *
 * No rule needs more than three tokens to decide, so the tables that ANTLR builds while it reads
 * stay small whatever the input.
 */
grammar PartProgram;

// ---------------------------------------------------------------------------------------------
// The block
// ---------------------------------------------------------------------------------------------

/*
 *   %
 *   /N120 G1 X1.204 F180. (first terrace)
 *   #3=15 G1 X#3
 *
 * The sequence number comes first, if there is one. Trade: a block delete may stand behind it, and
 * a sequence number that comes later in the block is read all the same.
 */
block
    : PERCENT EOF
    | blockDelete? (sequenceNumber blockDelete?)? (item (item | sequenceNumber)*)? EOF
    ;

/*
 * '/', and in the trade also '/1' to '/9' where the control has several block delete switches.
 */
blockDelete
    : SLASH NUMBER?
    ;

/* N120 */
sequenceNumber
    : N value
    ;

/*
 * Words, settings and comments come in any order (NISTIR 6556 section 3.3.6).
 */
item
    : word
    | setting
    | comment
    ;

/*
 * An address letter and its value: G1, X-1.204, F[#4*2]. A program number is a word as well: O1234
 * or, with the same meaning, :1234.
 *
 * In 'ASIN[30]' the A is the address and SIN[30] its value, since a block begins with addresses.
 */
word
    : (address | COLON) value
    ;

/* Every letter but N. */
address
    : A | B | C | D | E | F | G | H | I | J | K | L | M | O | P | Q | R | S | T | U | V | W | X | Y | Z
    ;

/*
 * #3=15, #[#1+2]=#4. It acts once the whole block has been read: '#3=6 G1 X#3' goes to the old
 * value of #3 (section 3.3.3). Trade: the right side may be an expression without brackets,
 * '#1=#1+1'.
 */
setting
    : HASH value EQUALS sum
    ;

/* (text), or a remark to the end of the line: ;text or //text (the remarks are trade). */
comment
    : COMMENT
    | REMARK
    ;

// ---------------------------------------------------------------------------------------------
// Values
// ---------------------------------------------------------------------------------------------

/*
 * What can stand behind an address letter: -1.5, #4, [#4+0.002], SIN[30]. The sign before anything
 * but a number is trade: -#4, -[#8/2]. A sign belongs to its value and binds tighter than any
 * operator: [-2 ** 2] is 4.
 */
value
    : (PLUS | MINUS)? (NUMBER | parameter | expression | function | arcTangent)
    ;

/* #4; ##4 is the parameter whose number stands in #4; #[#4+1] the one behind #4. */
parameter
    : HASH value
    ;

/* [ ... ] */
expression
    : LBRACKET sum RBRACKET
    ;

/*
 * Three groups of operators (section 3.3.2.3): first **, then * / MOD, then + - AND OR XOR. Within
 * a group the one on the left goes first, ** included: [2 ** 3 ** 2] is 64.
 */
sum
    : product (sumOperator product)*
    ;

product
    : power (productOperator power)*
    ;

power
    : value (POWER value)*
    ;

sumOperator
    : PLUS
    | MINUS
    | A N D
    | O R
    | X O R
    ;

productOperator
    : TIMES
    | SLASH
    | M O D
    ;

/* SQRT[2]: a name and an expression (section 3.3.2.4). Angles are in degrees. */
function
    : functionName expression
    ;

functionName
    : A B S
    | A C O S
    | A S I N
    | C O S
    | E X P
    | F I X
    | F U P
    | L N
    | R O U N D
    | S I N
    | S Q R T
    | T A N
    ;

/* ATAN[y]/[x]: the one function with two expressions. */
arcTangent
    : A T A N expression SLASH expression
    ;

// ---------------------------------------------------------------------------------------------
// Tokens
// ---------------------------------------------------------------------------------------------

/* A comment ends at the first ')'. */
COMMENT
    : '(' ~[)]* ')'
    ;

/* No rule takes this one, so a comment that nobody closed is always an error. */
UNCLOSED_COMMENT
    : '(' ~[)]*
    ;

REMARK
    : (';' | '//') ~[\r\n]*
    ;

/*
 * The digits of a number, without its sign: 10, 0.25, .5, 5. Blanks inside are legal (section 3.3:
 * 'g0x +0. 12 34y 7' is 'g0 x+0.1234 y7'), but one block in a program that has them is more often
 * a slip than a wish; the reader tells.
 */
NUMBER
    : DIGIT (BLANK* DIGIT)* (BLANK* '.' (BLANK* DIGIT)*)?
    | '.' (BLANK* DIGIT)+
    ;

PERCENT  : '%' ;
SLASH    : '/' ;
COLON    : ':' ;
HASH     : '#' ;
EQUALS   : '=' ;
COMMA    : ',' ;
LBRACKET : '[' ;
RBRACKET : ']' ;
PLUS     : '+' ;
MINUS    : '-' ;
TIMES    : '*' ;
POWER    : '*' BLANK* '*' ;

/*
 * Each letter is a token of its own. Whether S begins a speed, a sine or a square root is a matter
 * of where it stands, and blanks may part the letters of a name.
 */
A : [aA] ;
B : [bB] ;
C : [cC] ;
D : [dD] ;
E : [eE] ;
F : [fF] ;
G : [gG] ;
H : [hH] ;
I : [iI] ;
J : [jJ] ;
K : [kK] ;
L : [lL] ;
M : [mM] ;
N : [nN] ;
O : [oO] ;
P : [pP] ;
Q : [qQ] ;
R : [rR] ;
S : [sS] ;
T : [tT] ;
U : [uU] ;
V : [vV] ;
W : [wW] ;
X : [xX] ;
Y : [yY] ;
Z : [zZ] ;

/* Blanks mean nothing outside comments. */
BLANKS
    : BLANK+ -> skip
    ;

/* Anything else: no rule takes it, so it is an error where it stands. */
OTHER
    : .
    ;

fragment DIGIT : [0-9] ;
fragment BLANK : [ \t] ;
