%
O1 (a ramp leaves no wall at a level)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1. Y0. Z1.
Z0.
G1 X1. Z-0.004 F100.
G0 Z1.
M5
M30
%
