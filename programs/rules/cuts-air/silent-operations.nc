%
O1 (two slots of two operations, each with as much air as may be)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X0. F100.
Z-0.01
X-4.
Z0.
G0 Z1.
S20000
X-4. Y0.5
Z0.
G1 Z-0.02 F30.
X0. F100.
Z-0.01
X-4.
Z0.
G0 Z1.
M5
M30
%
