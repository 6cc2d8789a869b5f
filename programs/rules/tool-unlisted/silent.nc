%
O1 (tool 3 is listed)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X0. Y0. Z1.
T0 M6
M30
%
