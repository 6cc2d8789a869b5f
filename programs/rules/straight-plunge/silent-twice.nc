%
O1 (twice a tenth of the diameter, one below the other)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z0.1
G1 Z-0.04 F30.
G0 Z0.1
G1 Z-0.08
X0.5 F100.
G0 Z1.
M5
M30
%
