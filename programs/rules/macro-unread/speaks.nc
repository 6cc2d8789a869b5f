%
O1 (a condition in the middle)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below macro-unread warning @1: a condition
IF [#1 GT 2] GOTO 100
M30
%
