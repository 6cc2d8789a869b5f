%
O1 (across a hole of half its depth)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.01
G1 Z-0.004 F10.
G0 Z1.
X-3.
Z-0.008
G1 X3. F100.
G0 Z1.
M5
M30
%
