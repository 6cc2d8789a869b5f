%
O1 (a block just too short)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 X0.01 F450.
X0.0129 ; expect blocks-starve warning: 1 of 2 feed blocks are too short: the control can hold 435 mm/min on the shortest, programmed 450 mm/min
G0 X1.
G0 Z1.
M5
M30
%
