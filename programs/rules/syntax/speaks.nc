%
O1 (a number with two points, a letter without a number, a comment that nobody closed)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below syntax error @8: one decimal point
G1 X1.2.3 F100.
; expect below syntax error @8: expected a number
G1 X1. Y
; expect below syntax error
G1 X2. (left open
; expect below syntax error @1: T1.5
T1.5
M30
%
