%
O1 (where the rapid goes is not known)
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
G54 G0 X0. Y0. Z1.
Z#2 ; not checked rapid-into-stock: where a rapid goes is not known
Z1.
M5
M30
%
