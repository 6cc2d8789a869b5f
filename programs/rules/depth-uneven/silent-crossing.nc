%
O1 (across terraces, half-lapped, and out into air)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.003
G1 X0. F100.
Z-0.006
X3.
G0 Z1.
X-0.5 Y-2.
Z-0.007
G1 Y2.
X-0.3
Y-2.
G0 Z1.
X-3. Y0.2
Z-0.003
G1 X-1.
G0 Z1.
M5
M30
%
