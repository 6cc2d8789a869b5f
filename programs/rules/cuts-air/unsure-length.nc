%
O1 (behind a condition the length of a move is not known)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
; expect below macro-unread warning: a condition
IF [#1 GT 2] GOTO 100
T3 M6
G43 H3
S30000 M3
G1 X0. Y0. F100. ; not checked cuts-air: the length of a move is not known
X1.
G0 Z1.
M5
M30
%
