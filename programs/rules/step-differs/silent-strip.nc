%
O1 (the second pass beside the first)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.4 Z1.
Z-0.004
G1 X0. F100.
Z-0.008
X3.
G0 Z1.
X-3. Y0.0
Z-0.004
G1 X0.
Z-0.008
X3.
G0 Z1.
M5
M30
%
