%
O1 (a full turn of 1.2566 mm that falls a digit too far)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0.2 Y0. Z1.
Z0.
G2 X0.2 Y0. Z-0.0659 I-0.2 J0. F100. ; expect ramp-too-steep warning: a ramp of 3.002° into stock, the tool bears 3° && 0.0659 mm down over 1.257 mm; limit from tools.3.max_ramp_angle
G0 Z1.
M5
M30
%
