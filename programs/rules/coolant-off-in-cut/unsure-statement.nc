%
O1 (behind a condition the coolant is on or off)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
G0 X-3. Y0. Z1.
M8
Z-0.1
G1 X3. F60.
G0 Z1.
X-3.
; expect below macro-unread warning: a condition
IF [#1 GT 2] M9
T3 M6
G43 H3
S20000 M3
G54 G0 X-3. Y0.5 Z1.
Z-0.2
G1 X3. F60. ; not checked coolant-off-in-cut: coolant is unknown since line 15
G0 Z1.
M5
M30
%
