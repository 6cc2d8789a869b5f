%
O1 (X1E5 is X1 and a word E5)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below syntax error @6: E5: no exponent, but a word of its own
G1 X1e5 F400.
M30
%
