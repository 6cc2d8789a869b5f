%
O1 (plain motion behind an end)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
M2
(the rest)
X2. ; expect blocks-behind-end warning @1: M2 at line 7
X3.
Y1.
%
