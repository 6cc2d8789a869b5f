%
O1 (the tool's own offset)
G21 G90 G17 G94
G54
T3 M6
G0 X0. Y0.
G43 H3 Z1.
M30
%
