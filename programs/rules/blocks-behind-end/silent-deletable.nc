%
O1 (an end that the switch leaves out)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
/M30
X2.
M30
%
