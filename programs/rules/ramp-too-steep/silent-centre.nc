%
O1 (arcs around a centre that is not known, at one height: whatever they cut, they are no ramp)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0.2 Y0. Z1.
G1 Z-0.01 F30.
G2 X0.4 Y0. I#1 J0. F100.
G0 Z1.
M5
M30
%
