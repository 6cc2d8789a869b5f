%
O1 (behind a condition it is not known how long a move is: the control is taken to catch up)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 X0.0015 F450.
X0.003
X0.0045
X0.006
X0.0075
X0.009
; expect below macro-unread warning: a condition
IF [#1 GT 2] X5.
G1 X0.0105 Y0. Z1. F450. ; not checked blocks-starve: how long a block lasts is not known
G1 X0.012
X0.0135
X0.015
X0.0165
X0.018
G0 Z1.
M5
M30
%
