%
O1 (behind a condition the tool stands in the slot or beside it)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X0. F100.
; expect below macro-unread warning: a condition
IF [#1 GT 2] G0 Z1.
G1 X1. F100. ; not checked dwell-in-cut: whether a move cuts is not known: position not known
G4 P0.5 ; not checked dwell-in-cut: whether the tool touches the part during a dwell is not known
G0 Z1.
M5
M30
%
