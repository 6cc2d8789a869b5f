%
O1 (an end left in the middle)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
M30
G1 X2. ; expect blocks-behind-end warning @1: M30 at line 7 ends the program before
X3.
%
