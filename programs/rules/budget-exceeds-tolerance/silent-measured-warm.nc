%
O1 (a step from the uncut top, the tool measured behind the warm-up)
G21 G90 G17 G94
G54
T3 M6
S30000 M3
M71
M72
G0 G43 H3 Z1.
X-3. Y0.
Z-0.004
G1 X3. F100.
G0 Z1.
M5
M30
%
