%
O1 (a G92 shift that nobody takes back)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G92 X1. ; expect offset-shift-left warning: G92 && G92.1 before the end && the program ends at line 8 without taking it back
G1 X2. F100.
M30
%
