%
O1 (behind a condition the coolant is on or off)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
G0 X-3. Y0. Z1.
M8
Z-0.02
G1 X3. F60.
G0 Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] M9
G0 X-3. Y0. Z1.
Z-0.04
G1 X3. F60. ; not checked coolant-changed-in-fine-cut: coolant is unknown since line 16
G0 Z1.
M5
M30
%
