MIXER INSERT REV B
POST 2 ÄÖÜ
%
:1204
g0x +0. 12 34y 7
//note of the post
N10(no blanks)G1X.5Y-.5Z5.F+10
X10 20 Y0.12345678901234567
IF [#1 EQ 2] GOTO 10
WHILE[#1 LT 5]DO1
#1=#1+1
END1
#<depth> = 5
G1 X5.,R0.2
G65 P9010 A1. B[#2*2]
DPRNT[X#101[43]]
G1 X1,5
Y1.2.3
G1 Z
/2 M1
##2=[SIN[30]*-#4]
X-[#8/2]Y-#4
(nobody closed this
(outer (inner) rest)
%
O2 (SECOND)
M99
