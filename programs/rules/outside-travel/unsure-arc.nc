%
O1 (behind a condition the centre of an arc is not known)
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
G54 G0 X-3. Y0. Z1.
G2 X-1. I#2 J0. F500. ; not checked outside-travel: how far an arc reaches in X is not known
G0 X-3. Y0. Z1.
M5
M30
%
