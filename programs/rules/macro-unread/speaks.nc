%
O1 (a condition in the middle)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below macro-unread warning @1: a condition && unknown from here on: feed, tool selected, parameters, X, Y, Z && in the order written, each once && not or not wholly checked for it: the moves of 2 blocks, from line 8 to line 9
IF [#1 GT 2] GOTO 100
G1 X1. F100.
Y1. Z0.5
X2.
M30
%
