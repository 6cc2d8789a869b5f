%
O1 (behind a condition the spindle turns one way or the other)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
; expect below macro-unread warning: a condition
IF [#1 GT 2] M4
G0 X-3. Y0. Z1.
G1 Z-0.1 F100.
X3.
Y-0.1
X-3. ; not checked cut-direction-mixed: which way the spindle turns is unknown since line 11
G0 Z1.
M5
M30
%
