%
O1 (behind a condition compensation is on or off)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] G41 D3 ; not checked compensation-left-on: radius compensation is unknown since line 7
G0 X2. Y0. Z1.
M30
%
