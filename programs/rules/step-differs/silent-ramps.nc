%
O1 (ramps to both terraces, and a hole beside them)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1.5 Y0. Z1.
Z0.001
G1 X-1. Z-0.004 F100.
X0.
X1. Z-0.008
X1.5
X0.
G0 Z1.
X-1.5 Y0.6
Z0.01
G1 Z-0.02 F10.
G0 Z1.
M5
M30
%
