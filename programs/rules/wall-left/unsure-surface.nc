%
O1 (what is left behind a move to an unknown place is not known)
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
G1 X0. Y0. F100. ; not checked wall-left: the surface
G0 Z1.
X-3. Y0.1
Z-0.04
G1 X3. F100.
G0 Z1.
M5
M30
%
