%
O1 (down to the very top of the part)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.
G1 Z-0.02 F30.
X1. F100.
G0 Z1.
M5
M30
%
