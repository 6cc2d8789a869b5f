%
O1 (a ramp along Y, just too steep)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y-0.5 Z1.
Z0.
G1 Y0.5 Z-0.0525 F100. ; expect ramp-too-steep warning: a ramp of 3.005° into stock, the tool bears 3° && 0.0525 mm down over 1 mm; limit from tools.3.max_ramp_angle
G0 Z1.
M5
M30
%
