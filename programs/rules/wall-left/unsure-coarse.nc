%
O1 (a thin tool on a large plate: a wall would be no wider than two cells)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-60. Y0. Z1.
Z-0.01
G1 X60. F100.
G0 Z1.
M5
M30 ; not checked wall-left: a tenth of the tool is no more than two cells of the surface
%
