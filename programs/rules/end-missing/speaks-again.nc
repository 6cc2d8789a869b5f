%
O1 (a main program that begins again)
G21 G90 G17 G94
G54
S30000 M3
G0 X0. Y0. Z1.
M5
M99 ; expect end-missing warning @1: ends with M99, not with M2 or M30
%
