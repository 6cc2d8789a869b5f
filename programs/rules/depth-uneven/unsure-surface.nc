%
O1 (behind a move to an unknown place it is not known what a pass takes)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F100.
; expect below macro-unread warning: a condition
IF [#1 GT 2] X1.
G1 Y0.1  ; not checked depth-uneven: the surface of G54 is not known: a coordinate of a feed move is not known
G0 X-3. Y0. Z1.
Z-0.008
G1 X3. F100. ; not checked depth-uneven: the surface before the cut is not known
G0 Z1.
M5
M30
%
