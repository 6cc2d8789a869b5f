%
O1 (a full slot would just make the chip)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] GOTO 100
T3 M6
G43 H3
S30000 M3
G1 X0. Y0. F300.
G0 Z1.
X-3. Y0.1
Z-0.04
G1 X3. F27. (hairline: accept feed-below-edge-radius: shown beside) ; not checked chip-below-minimum: the width or depth of cut is not known, and the chip of a full slot would do
G0 Z1.
M5
M30
%
