%
O1 (behind a condition the work offset is one or the other)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] G55
X160. ; not checked outside-travel: the work offset is not known
G54 X0. Y0. Z1.
X#1 ; not checked outside-travel: where X goes is not known
X0.
M5
M30
%
