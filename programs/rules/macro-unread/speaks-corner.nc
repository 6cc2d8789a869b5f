%
O1 (a rounded corner; X is known again behind the next block)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 Y0.5 F100.
X1. ,R0.2 ; expect macro-unread warning: corner rounding && unknown from here on: X && not or not wholly checked for it: the moves of 1 block, at line 8
Y1. X1.
X2.
M30
%
