%
O1 (a helix around a centre that a parameter tells which nobody has set)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0.2 Y0. Z1.
Z0.
G2 X0.2 Y0. Z-0.0659 I#1 J0. F100. ; not checked ramp-too-steep: the circle of an arc is not known
G0 Z1.
M5
M30
%
