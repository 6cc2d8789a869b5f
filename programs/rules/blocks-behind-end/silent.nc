%
O1 (the end stands last)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
X2.
X3.
M30
%
