%
O1 (the last one a micron and a half longer: just long enough)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 X0.0015 F450.
X0.003
X0.0045
X0.006
X0.0075
X0.009
X0.012
G0 Z1.
M5
M30
%
