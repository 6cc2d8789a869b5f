%
O1 (G49, and home in machine coordinates)
G21 G90 G17 G94
G54
T3 M6
G0 X0. Y0.
G43 H3 Z1.
G49
G53 G0 Z0.
X1.
G43 H3 Z1.
M30
%
