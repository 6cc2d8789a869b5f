%
O1 (a ball across a hole: its depth is no step-down all over its width)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.01
G1 Z-0.0041 F10.
G0 Z1.
T5 M6
G43 H5
S30000 M3
G0 X-3. Y0. Z1.
Z-0.008
G1 X3. F100.
G0 Z1.
M5
M30
%
