%
O1 (in a full slot every tooth would cut)
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
G1 X3. F48.1 ; not checked runout-exceeds-feed: the width of cut is not known, and a full slot would let every tooth cut
G0 Z1.
M5
M30
%
